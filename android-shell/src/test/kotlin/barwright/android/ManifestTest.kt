package barwright.android

import org.junit.Assert.assertEquals
import org.junit.Test
import org.w3c.dom.Element
import java.io.File
import javax.xml.parsers.DocumentBuilderFactory

/** The manifest asks for no more, and opens no more, than the README says. */
class ManifestTest {
    private val space = "http://schemas.android.com/apk/res/android"
    private val manifest: Element = DocumentBuilderFactory.newInstance().apply { isNamespaceAware = true }
        .newDocumentBuilder().parse(File("src/main/AndroidManifest.xml")).documentElement

    private fun all(name: String) = manifest.getElementsByTagName(name).let { found ->
        (0 until found.length).map { found.item(it) as Element }
    }

    private fun names(of: List<Element>) = of.map { it.getAttributeNS(space, "name") }.toSet()

    @Test
    fun permissionsAreTheseAndNoNetwork() = assertEquals(
        setOf("POST_NOTIFICATIONS", "SCHEDULE_EXACT_ALARM", "VIBRATE", "RECEIVE_BOOT_COMPLETED")
            .map { "android.permission.$it" }.toSet(),
        names(all("uses-permission")),
    )

    @Test
    fun onlyTheLauncherAndTheFileViewerAreExported() {
        val components = listOf("activity", "activity-alias", "service", "receiver", "provider").flatMap(::all)
        assertEquals(
            setOf(".MainActivity", ".PlanFileActivity"),
            names(components.filter { it.getAttributeNS(space, "exported") == "true" }),
        )
        // Nothing is left to a default.
        assertEquals(emptySet<String>(), names(components.filter { it.getAttributeNS(space, "exported").isEmpty() }))
    }
}
