package barwright.android

import org.junit.Assert.assertEquals
import org.junit.Test
import org.w3c.dom.Element
import java.io.File
import javax.xml.parsers.DocumentBuilderFactory

/** The manifest asks for no more, and opens no more, than the README says. */
class ManifestTest {
    private val space = "http://schemas.android.com/apk/res/android"
    private val manifest = xml("AndroidManifest.xml")

    private fun xml(name: String): Element = DocumentBuilderFactory.newInstance().apply { isNamespaceAware = true }
        .newDocumentBuilder().parse(File("src/main/$name")).documentElement

    private fun all(name: String, within: Element = manifest) = within.getElementsByTagName(name).let { found ->
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

    @Test
    fun theFileViewerTakesTextsHandedOverAndNothingElse() {
        val viewer = all("activity").single { it.getAttributeNS(space, "name") == ".PlanFileActivity" }
        assertEquals(setOf("android.intent.action.VIEW"), names(all("action", viewer)))
        // No links of the web: what it reads was handed over by another app.
        assertEquals(setOf("android.intent.category.DEFAULT"), names(all("category", viewer)))
        assertEquals(setOf("content", ""), all("data", viewer).map { it.getAttributeNS(space, "scheme") }.toSet())
    }

    @Test
    fun nothingGoesToACloud() {
        val application = all("application").single()
        assertEquals("@xml/data_extraction_rules", application.getAttributeNS(space, "dataExtractionRules"))
        assertEquals("@xml/full_backup", application.getAttributeNS(space, "fullBackupContent"))
        val every = setOf("root", "file", "database", "sharedpref", "external")
        fun excluded(rules: Element) = all("exclude", rules).map { it.getAttribute("domain") }.toSet()
        val cloud = all("cloud-backup", xml("res/xml/data_extraction_rules.xml")).single()
        assertEquals(every, excluded(cloud))
        assertEquals(emptyList<Element>(), all("include", cloud))
        val old = xml("res/xml/full_backup.xml")
        assertEquals(every, excluded(old))
        assertEquals(emptyList<Element>(), all("include", old))
    }

    @Test
    fun theRecordsGoAlongToASuccessor() {
        val device = all("device-transfer", xml("res/xml/data_extraction_rules.xml")).single()
        assertEquals(setOf("file store/", "sharedpref ."), all("include", device).map { "${it.getAttribute("domain")} ${it.getAttribute("path")}" }.toSet())
    }
}
