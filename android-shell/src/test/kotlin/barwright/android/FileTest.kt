package barwright.android

import android.app.Activity
import android.content.Intent as Call
import android.net.Uri
import barwright.android.screen.PlanView
import barwright.core.Draft
import barwright.core.Engine
import barwright.core.FileFault
import barwright.core.Look
import barwright.core.PlanScreen
import barwright.core.Screen
import org.junit.Assert.assertEquals
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import org.robolectric.Robolectric
import org.robolectric.Shadows.shadowOf
import java.io.ByteArrayInputStream
import java.io.File
import java.io.RandomAccessFile

/** Plans from files, and what outlives the process. */
class FileTest : PhoneTest() {
    private fun open(text: String) {
        val file = Uri.parse("content://elsewhere/plan.toml")
        shadowOf(app.contentResolver).registerInputStreamSupplier(file) { ByteArrayInputStream(text.toByteArray()) }
        // The door that other apps knock at hands the file on.
        Robolectric.buildActivity(PlanFileActivity::class.java, Call(Call.ACTION_VIEW, file)).create()
        val handed = shadowOf(app).nextStartedActivity
        assertEquals(MainActivity::class.java.name, handed.component!!.className)
        start(handed)
    }

    @Test
    fun aPlanFromAnotherAppIsReadAndAdoptedByTouch() {
        open(demo("plan.toml"))
        assertTrue(texts().toString(), sees("Boathouse off-season"))
        tap("Adopt")
        assertTrue(ask(Look.Weeks) is Screen.Weeks)
        assertTrue(texts().toString(), sees("Week 1"))
    }

    @Test
    fun aFaultIsShownInItsPlace() {
        open(demo("plan.toml").replace("weeks = 8\nminutes", "weeeks = 8\nminutes"))
        assertTrue(texts().toString(), sees("Line 5, column 1"))
        assertTrue(texts().toString(), sees("weeeks = 8"))
        assertTrue(texts().toString(), sees("^^^^^^"))
        assertTrue(texts().toString(), !hasKey("Adopt"))
    }

    @Test
    fun aFileThatCantBeReadIsSaid() {
        val file = Uri.parse("content://elsewhere/gone.toml")
        shadowOf(app.contentResolver).registerInputStreamSupplier(file) { throw java.io.FileNotFoundException() }
        start(Call(app, MainActivity::class.java).setAction(Call.ACTION_VIEW).setData(file))
        assertTrue(texts().toString(), sees("can't be read"))
    }

    /** The picker's answer to what was just asked of it. */
    private fun picked(file: Uri, action: String) {
        val asked = shadowOf(activity).nextStartedActivityForResult
        assertEquals(action, asked.intent.action)
        shadowOf(activity).receiveResult(asked.intent, Activity.RESULT_OK, Call().setData(file))
        settle()
    }

    private fun file(text: String): Uri = Uri.parse("content://elsewhere/file.toml").also { file ->
        shadowOf(app.contentResolver).registerInputStreamSupplier(file) { ByteArrayInputStream(text.toByteArray()) }
    }

    @Test
    fun aPlanAndAGymAreFoundByThePicker() {
        start()
        tap("Go to…")
        tap("Open an equipment file")
        picked(file(demo("gym.toml")), Call.ACTION_OPEN_DOCUMENT)
        assertTrue(texts().toString(), sees("Boathouse cellar"))
        activity.go(Look.Today(null, null))
        settle()
        // With nothing on, today's sheet offers it by itself.
        tap("Open a file")
        picked(file(demo("plan.toml")), Call.ACTION_OPEN_DOCUMENT)
        assertTrue(texts().toString(), sees("Boathouse off-season") && hasKey("Adopt"))
    }

    @Test
    fun aFaultInAGymIsSaid() {
        start()
        tap("Go to…")
        tap("Open an equipment file")
        picked(file("name = 3"), Call.ACTION_OPEN_DOCUMENT)
        assertTrue(texts().toString(), hasKey("Understood"))
        assertTrue((ask(Look.Equipment) as Screen.Equipment).equipment.title != "3")
    }

    @Test
    fun anAdvisingFaultIsToldFromOneThatForbids() {
        start()
        val view = PlanView(activity, activity) {}
        fun shown(advises: Boolean): List<String> {
            val fault = FileFault(3u, 1u, "rest = \"9:00\"", "^^^^", "a long rest", "Say that it is meant.", advises, if (advises) "look at" else "fault", if (advises) "long-rest" else "")
            view.apply(PlanScreen("A plan", "", emptyList(), listOf(fault), emptyList(), ""))
            return views(view).filterIsInstance<android.widget.TextView>().map { it.text.toString() }.toList()
        }
        assertTrue("${shown(true)}", "Line 3, column 1: look at · long-rest" in shown(true))
        assertTrue("${shown(false)}", "✗ Line 3, column 1: fault" in shown(false))
    }

    @Test
    fun aCopyOfTheRecordsGoesThroughTheShareSheet() {
        demoStore()
        start()
        repeat(2) {
            tap("Go to…")
            tap("Share a copy of the records")
            val sheet = shadowOf(app).nextStartedActivity
            assertEquals(Call.ACTION_CHOOSER, sheet.action)
            val send = sheet.getParcelableExtra(Call.EXTRA_INTENT, Call::class.java)!!
            assertTrue(send.flags and Call.FLAG_GRANT_READ_URI_PERMISSION != 0)
            val stream = send.getParcelableExtra(Call.EXTRA_STREAM, Uri::class.java)!!
            assertEquals("content", stream.scheme)
            // Whoever gets it reads the whole records, and can do no more.
            val provider = provider()
            val got = File(app.cacheDir, "got$it.db")
            provider.openFile(stream, "r").use { from ->
                java.io.FileInputStream(from.fileDescriptor).use { bytes -> got.outputStream().use(bytes::copyTo) }
            }
            Engine.open(got.path, "en-GB").use { copy -> assertTrue(copy.checkRecords() > 100uL) }
            assertThrows(java.io.FileNotFoundException::class.java) { provider.openFile(stream, "rw") }
            activity.back()
            settle()
        }
    }

    private fun provider(): SharedFiles = Robolectric.setupContentProvider(SharedFiles::class.java, "barwright.android.files")

    @Test
    fun nothingElseIsHandedOut() {
        prepare()
        val provider = provider()
        SharedFiles.folder(app)
        for (path in listOf("../../files/store/barwright.db", "..", "barwright.db", "%2e%2e%2ffiles%2fstore%2fbarwright.db")) {
            for (uri in listOf(
                Uri.parse("content://barwright.android.files/$path"),
                Uri.Builder().scheme("content").authority("barwright.android.files").appendPath(path).build(),
            )) assertThrows("$uri", java.io.FileNotFoundException::class.java) { provider.openFile(uri, "r") }
        }
    }

    @Test
    fun aCopyOfTheRecordsIsSavedWhereThePickerSays() {
        demoStore()
        start()
        val place = Uri.parse("content://elsewhere/copy.db")
        val out = java.io.ByteArrayOutputStream()
        shadowOf(app.contentResolver).registerOutputStream(place, out)
        tap("Go to…")
        tap("Save a copy of the records")
        picked(place, Call.ACTION_CREATE_DOCUMENT)
        assertTrue(texts().toString(), sees("A copy of the records was saved."))
        val got = File(app.cacheDir, "saved.db").apply { writeBytes(out.toByteArray()) }
        Engine.open(got.path, "en-GB").use { copy -> assertTrue(copy.checkRecords() > 100uL) }
    }

    @Test
    fun theRecordsAreCheckedWhenAsked() {
        demoStore()
        start()
        tap("Go to…")
        tap("Check the records")
        assertTrue(texts().toString(), texts().any { it.startsWith("The records are complete: ") })
    }

    @Test
    fun damagedRecordsAreRecoveredByTouch() {
        demoStore()
        damage()
        start()
        assertTrue(texts().toString(), sees("The file is damaged"))
        tap("Recover")
        assertTrue(texts().toString(), sees("is kept as"))
        tap("Understood")
        // It works again: a screen stands, and a tap is taken.
        assertTrue(ask(Look.Today(null, null)) is Screen.Today)
        assertTrue(File(app.filesDir, "store").listFiles()!!.size >= 2)
    }

    /** Spoils the page of the schema: everything else can be read page by page. */
    private fun damage() {
        RandomAccessFile(app.records, "rw").use { bytes ->
            bytes.seek(100)
            bytes.write(ByteArray(3996) { 0x5a })
        }
    }

    @Test
    fun aHeaderThatAloneSaysAnotherReleaseIsLeftAlone() {
        val file = app.records.apply { parentFile!!.mkdirs() }
        File("target/demo.db").copyTo(file)
        // SQLite keeps the version of a file at byte 60; the file says another, so it is spoiled.
        RandomAccessFile(file, "rw").use { bytes ->
            bytes.seek(60)
            bytes.writeInt(1_000_000)
        }
        val before = file.readBytes().toList()
        start()
        assertTrue(texts().toString(), sees("The file is damaged"))
        assertEquals(before, file.readBytes().toList())
    }

    @Test
    fun aSavedStateStaysSmallHoweverFarOneWent() {
        prepare()
        start()
        repeat(20) {
            activity.go(Look.Plan(demo("plan.toml") + "#".repeat(90_000), null))
            settle()
            activity.go(Look.Weeks)
            settle()
        }
        val saved = leave()
        val parcel = android.os.Parcel.obtain()
        parcel.writeBundle(saved)
        assertTrue("${parcel.dataSize()}", parcel.dataSize() < 100_000)
        parcel.recycle()
        die()
        start(saved = saved)
        assertTrue(texts().toString(), sees("Week 1"))
        activity.back()
        settle()
        assertTrue(texts().toString(), sees("Boathouse off-season"))
    }

    @Test
    fun everyLookOutlivesTheProcess() {
        for (look in listOf(
            Look.Today(null, null),
            Look.Today("2.1", 45u),
            Look.Floor(Draft(7u, "112.5", 1u, "0.1.0", "more")),
            Look.Floor(Draft(null, null, 0u, null, null)),
            Look.Tally,
            Look.Weeks,
            Look.Lift("back-squat", 3u),
            Look.Balance(null),
            Look.Balance(4u),
            Look.Equipment,
            Look.Plan(null, null),
            Look.Plan("name = \"x\"", 2u),
        )) assertEquals(look, LookBundle.read(LookBundle.of(look)))
    }

    @Test
    fun backLeadsBackAndOutOfAPanelFirst() {
        prepare()
        start()
        activity.go(Look.Weeks)
        settle()
        activity.go(Look.Equipment)
        settle()
        activity.onBackPressed()
        settle()
        assertTrue(sees("Week 1"))
        activity.onBackPressed()
        settle()
        tap("Begin")
        tap("More…")
        assertTrue(hasKey("Skip this set"))
        activity.onBackPressed()
        settle()
        assertTrue(!hasKey("Skip this set") && hasKey("Done"))
        activity.onBackPressed()
        settle()
        assertTrue(texts().toString(), sees("Boathouse off-season"))
    }
}
