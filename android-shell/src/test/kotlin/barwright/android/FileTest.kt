package barwright.android

import android.content.Intent as Call
import android.net.Uri
import barwright.core.Draft
import barwright.core.Look
import barwright.core.Screen
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.robolectric.Robolectric
import org.robolectric.Shadows.shadowOf
import java.io.ByteArrayInputStream

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
        assertTrue(hasKey("Leave this set out"))
        activity.onBackPressed()
        settle()
        assertTrue(!hasKey("Leave this set out") && hasKey("Racked"))
        activity.onBackPressed()
        settle()
        assertTrue(texts().toString(), sees("Boathouse off-season"))
    }
}
