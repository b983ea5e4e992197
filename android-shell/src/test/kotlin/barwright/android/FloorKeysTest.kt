package barwright.android

import android.graphics.Rect
import android.os.Vibrator
import android.view.View
import android.view.ViewGroup
import android.widget.Button
import android.widget.EditText
import android.widget.TextView
import barwright.android.screen.Places
import barwright.android.view.BarView
import barwright.android.view.KeyView
import barwright.core.Look
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.shadows.ShadowAlarmManager
import java.util.Collections
import java.util.IdentityHashMap

/** The floor's keys and figures, one by one. */
class FloorKeysTest : FloorTest() {
    @Test
    fun aNewFloorChangesViewsInPlace() {
        begin("1.1")
        // Each kind of floor once: a load of its own, effort keys, a rest before and after.
        recordUntil { it.thumb.effort.isNotEmpty() }
        tap("6")
        pass(3)
        tap("Undo")
        val known: MutableSet<View> = Collections.newSetFromMap(IdentityHashMap())
        known.addAll(everything(root))
        tap("+")
        tap("−")
        tap("6")
        repeat(5) { pass(1) }
        recordNext()
        pass(1)
        tap("Undo")
        tap("Undo")
        pass(240)
        val now = everything(root)
        val made = now.filterNot { it in known }
        assertTrue("made anew: $made", made.isEmpty())
        assertEquals("none is thrown away", known.size, now.size)
    }

    private fun everything(of: View): List<View> =
        listOf(of) + if (of is ViewGroup) (0 until of.childCount).flatMap { everything(of.getChildAt(it)) } else emptyList()

    @Test
    fun theFigureStepsAndIsWhatIsRecorded() {
        begin("1.1")
        assertTrue(sees("3 reps"))
        tap("−")
        assertTrue(texts().toString(), sees("2 reps"))
        tap(wide)
        tap("Undo")
        assertTrue(hasKey("Redo"))
        tap("Redo")
        tap("More…")
        tap("Finish the session now")
        assertTrue(texts().toString(), sees("bodyweight × 2"))
    }

    @Test
    fun halfARepetitionLiesBehindALongPress() {
        begin("1.1")
        recordUntil { it.thumb.effort.isNotEmpty() }
        hold("8")
        tap("More…")
        tap("Finish the session now")
        assertTrue(texts().toString(), sees("RPE 8.5"))
    }

    @Test
    fun aHoldCountsOnTheScreen() {
        beginEveryKind()
        recordUntil { "Plank" == it.call.exercise }
        tap("Start the hold")
        assertTrue(texts().toString(), sees("0 s"))
        repeat(12) { pass(1) }
        assertTrue(texts().toString(), sees("12 s"))
        tap("Done")
        assertTrue(floor.call.exercise != "Plank")
    }

    @Test
    fun aRestCountsOnTheScreenAndByItselfEnds() {
        begin("1.1")
        tap(wide)
        assertTrue(texts().toString(), sees("1:00"))
        pass(10)
        assertTrue(texts().toString(), sees("0:50"))
        tap("+20 s")
        assertTrue(texts().toString(), sees("1:10"))
        tap(wide)
        assertTrue(texts().toString(), sees("1:00"))
        repeat(62) { pass(1) }
        assertTrue(texts().toString(), sees("+0:02"))
    }

    @Test
    fun nothingPollsWhileARestRunsOutOfSight() {
        ShadowAlarmManager.setCanScheduleExactAlarms(true)
        begin("1.1")
        tap(wide)
        leave()
        val reads = clocks.reads
        pass(50)
        assertEquals("the clock is read, so something runs", reads, clocks.reads)
    }

    @Test
    fun anotherRegionIsFollowedInTheMiddleOfASession() {
        begin("1.1")
        recordUntil { it.thumb.effort.isNotEmpty() }
        assertTrue(key("8").contentDescription.contains("8") && floor.thumb.effort[3].half!!.label == "8.5")
        rotate("de-rDE-w411dp-h914dp-port-night-420dpi")
        app.onConfigurationChanged(app.resources.configuration)
        activity.go(Places.FLOOR)
        settle()
        assertEquals("8,5", floor.thumb.effort[3].half!!.label)
    }

    @Test
    fun anotherLiftBeginsAtItsTop() {
        demoStore()
        start()
        activity.go(Look.Lift("back-squat", 0u))
        settle()
        val scroll = { views().filterIsInstance<android.widget.ScrollView>().first() }
        tap("Deadlift")
        assertTrue(texts().toString(), texts().first() == "Deadlift")
        assertEquals(0, scroll().scrollY)
    }

    @Test
    fun aPartnersTapsKeepTheirPanelWhileARestCounts() {
        begin("1.1")
        tap(wide)
        tap("More…")
        tap("A partner taps the reps…")
        tap("The first rep begins")
        repeat(3) { pass(1) }
        tap("Rep 1 over")
        pass(1)
        assertTrue(texts().toString(), sees("1 rep tapped") && hasKey("Rep 2 over"))
        tap("Back")
        assertTrue(texts().toString(), hasWide)
    }

    @Test
    fun aTapIsFelt() {
        begin("1.1")
        val vibrator = shadowOf(app.getSystemService(Vibrator::class.java))
        assertEquals(0L, vibrator.milliseconds)
        tap(wide)
        assertEquals(35L, vibrator.milliseconds)
    }

    @Test
    fun aSecondTapOnTheSameSetIsRefusedInWords() {
        begin("1.1")
        val key = key(wide)
        key.performClick()
        key.performClick()
        settle()
        assertTrue(texts().toString(), sees("recorded already"))
        tap("Understood")
        assertFalse(sees("recorded already"))
    }

    @Test
    fun aLoadThatIsMuchAsksFirst() {
        demoStore()
        start()
        tap("Begin")
        recordUntil { it.call.exercise == "Back squat" && it.thumb.effort.isNotEmpty() }
        tap("More…")
        tap("Choose a load…")
        type("Load", "190 kg")
        assertTrue(texts().toString(), hasKey("Do it all the same"))
        tap("Do it all the same")
        assertEquals("190 kg", floor.bar.total)
    }

    @Test
    fun keysAreHighAndApart() {
        begin("1.1")
        recordUntil { it.thumb.effort.isNotEmpty() }
        keysFit()
        tap("Set cut short…")
        keysFit()
        tap("Back")
        tap("More…")
        tap("Notes and set-up…")
        val density = activity.resources.displayMetrics.density
        val entries = views().filter { it is EditText || (it is Button && it !is KeyView) }.toList()
        assertTrue("$entries", entries.size >= 6)
        for (entry in entries) assertTrue("$entry", entry.height >= 64 * density - 1)
    }

    @Test
    @Config(qualifiers = "w320dp-h568dp-night-xhdpi")
    fun whatGoesOnTheBarIsNeverUnderTheFoldOfASmallPhone() = theBarStandsOverAllButTheCountdown()

    @Test
    fun whatGoesOnTheBarIsNeverUnderTheFoldOfLargeText() {
        RuntimeEnvironment.setFontScale(2f)
        theBarStandsOverAllButTheCountdown()
    }

    private fun theBarStandsOverAllButTheCountdown() {
        begin("1.1")
        recordUntil { it.thumb.effort.isNotEmpty() }
        // The first set after the ramp: a rest, plates to change and effort keys at once.
        assertTrue("$floor", floor.rest != null && floor.bar.change.isNotEmpty())
        barStandsFree()
        tap("8")
        pass(3)
        barStandsFree()
    }

    private fun barStandsFree() {
        // What is of the second rank stays less than half as high, however large the text is.
        val density = activity.resources.displayMetrics.density
        for (second in listOf("uncalled", "ended")) named(second)?.let { assertTrue("${it.text}", it.height < 32 * density) }
        fun place(view: View) = Rect().also { r ->
            val at = IntArray(2).also(view::getLocationInWindow)
            r.set(at[0], at[1], at[0] + view.width, at[1] + view.height)
        }
        fun text(words: String) = place(views().first { it is TextView && it.isShown && it.text.toString() == words })
        val (shorter, longer) = listOf("−20 s", "+20 s").map { place(key(it)) }
        val figures = text(floor.rest!!.text)
        // Together, after the figures.
        assertTrue("$figures $shorter $longer", figures.right <= shorter.left && shorter.right < longer.left)
        val total = text(floor.bar.total)
        val sentence = text(floor.call.sentence)
        assertTrue("$total $sentence", total.top >= figures.top && total.bottom <= sentence.top)
        val drawn = place(views().first { it is BarView && it.isShown })
        val hand = place(key("−"))
        assertTrue("$drawn $hand", drawn.bottom <= sentence.top && drawn.bottom <= hand.top)
    }

    private fun keysFit() {
        val density = activity.resources.displayMetrics.density
        // What records nothing may be smaller.
        val places = keys().filter { it.text != "Go to…" }.map { key ->
            Rect().also { r ->
                val at = IntArray(2).also(key::getLocationInWindow)
                r.set(at[0], at[1], at[0] + key.width, at[1] + key.height)
            } to key.text
        }
        // What is of the second rank is less than half as high as the rest.
        val second = listOf("No effort called", "Set cut short…")
        for ((place, name) in places) {
            val fits = if (name in second) place.height() < 32 * density else place.height() >= 64 * density - 1
            assertTrue("$name ${place.height()}", fits)
        }
        val hand = places.filter { it.first.top > root.height / 2 }
        assertTrue(hand.size > 5)
        for ((one, a) in hand) for ((other, b) in hand) {
            if (one === other) continue
            val apart = Rect(one).apply { inset((-11.5 * density).toInt(), (-11.5 * density).toInt()) }
            assertFalse("$a and $b", Rect.intersects(apart, other))
        }
    }
}
