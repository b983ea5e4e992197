package barwright.android

import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File

/** What the sources promise, read from the sources. */
class HouseTest {
    private val sources = File("src/main/kotlin").walk().filter { it.extension == "kt" }.toList()

    private fun none(what: String, words: Regex) {
        for (file in sources) file.readLines().forEachIndexed { at, line ->
            assertTrue("$what: ${file.name}:${at + 1}: $line", !words.containsMatchIn(line))
        }
    }

    @Test
    fun noAndroidxAndNoNetwork() {
        assertTrue(sources.size > 15)
        none("not the platform's own", Regex("androidx|com\\.google"))
        none("a network", Regex("java\\.net|HttpURL|Socket|WebView"))
    }

    /** With reduced motion nothing may move: nothing moves at any time. */
    @Test
    fun nothingIsAnimated() = none(
        "motion",
        Regex("android\\.animation|view\\.animation|LayoutTransition|\\.animate\\(|smoothScroll|overridePendingTransition"),
    )

    /** Loads, amounts and durations come as words: the shell has no numbers of them to work with. */
    @Test
    fun noFigureIsReadOutOfWords() = none(
        "a figure made of words",
        Regex("toDouble|toBigDecimal|toInt\\(10|parseInt|parseDouble|String\\.format|\\.format\\(|substringBefore|split\\(\"|toRegex"),
    )

    /** Every word of the shell's own is there in German, with the same places to fill. */
    @Test
    fun theShellsOwnWordsAreThereInGerman() {
        fun words(folder: String): Map<String, String> {
            val text = File("src/main/res/$folder/strings.xml").readText()
            val one = Regex("<(?:string name|item quantity)=\"(\\w+)\">(.*)</(?:string|item)>")
            return one.findAll(text).associate { it.groupValues[1] to it.groupValues[2] }
        }
        val places = Regex("%\\d\\\$s")
        val english = words("values") - "app_name"
        val german = words("values-de")
        assertTrue(english.size > 40)
        assertEquals(english.keys, german.keys)
        for ((name, said) in english) {
            val there = german.getValue(name)
            assertTrue(name, there.isNotEmpty() && (there != said || name == "place_plan"))
            fun filled(words: String) = places.findAll(words).map { it.value }.toSet()
            assertEquals(name, filled(said), filled(there))
        }
    }

    @Test
    fun theCoreIsOpenedInOnePlace() {
        val opening = sources.filter { "Engine.open" in it.readText() }.map { it.name }
        assertEquals(listOf("BarwrightApp.kt"), opening)
        val threads = sources.filter { Regex("HandlerThread\\(|\\bThread\\(|Executors|Timer\\(").containsMatchIn(it.readText()) }
        assertEquals(listOf("CoreThread.kt"), threads.map { it.name })
    }

    /** Gradle and Maven build the same thing. */
    @Test
    fun bothBuildsTakeTheSameVersions() {
        val pom = File("pom.xml").readText()
        val catalogue = File("gradle/libs.versions.toml").readText()
        fun maven(name: String) = Regex("<$name>(.*)</$name>").find(pom)!!.groupValues[1]
        fun gradle(name: String) = Regex("(?m)^$name = \"(.*)\"").find(catalogue)!!.groupValues[1]
        assertEquals(maven("kotlin.version"), gradle("kotlin"))
        assertEquals(maven("jna.version"), gradle("jna"))
        val build = File("build.gradle.kts").readText()
        val check = File("check").readText()
        for ((gradle, aapt) in listOf("minSdk" to "--min-sdk-version", "targetSdk" to "--target-sdk-version")) {
            val here = Regex("$gradle = (\\d+)").find(build)!!.groupValues[1]
            assertTrue("$gradle $here", "$aapt $here" in check)
        }
    }
}
