package barwright.android

import barwright.android.screen.Places
import barwright.core.Look
import barwright.core.Screen
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertTrue
import org.junit.Test
import java.util.Collections
import java.util.IdentityHashMap

/** Whole sessions by touch, with the real core. */
class SessionTest : PhoneTest() {
    private fun begin(session: String? = null) {
        prepare()
        start()
        if (session != null) {
            activity.go(Look.Today(session, null))
            settle()
        }
        tap("Begin")
        assertTrue(texts().toString(), hasKey("More…"))
    }

    /** Records whatever is next the way most taps do, and says which kind of key did it. */
    private fun recordNext(turn: Int): String {
        val floor = (ask(Places.FLOOR) as Screen.Floor).floor
        val thumb = floor.thumb
        if (floor.bar.line.startsWith("Your choice")) return chooseLoad()
        val label = thumb.main?.label ?: thumb.effort[turn % 4].key.label
        tap(label)
        return if (thumb.main == null) "effort" else label
    }

    /** The plan leaves the load to the lifter: one that this gym makes, or the exercise is left out. */
    private fun chooseLoad(): String {
        tap("More…")
        tap("Another load…")
        for (load in listOf("16 kg", "15 kg", "20 kg", "7 kg")) {
            type("Load", load)
            if (!sees("can't make")) return "load"
            tap("Understood")
        }
        tap("Back")
        tap("More…")
        tap("Leave the rest of it out")
        return "left out"
    }

    private fun run(until: Int = 200): List<String> {
        val kinds = ArrayList<String>()
        var turns = 0
        while (turns < until && !title().startsWith("Done") && ask(Places.FLOOR) is Screen.Floor) {
            kinds.add(recordNext(turns))
            pass(45)
            turns += 1
        }
        return kinds
    }

    private fun title() = texts().first()

    @Test
    fun anOrdinarySessionIsOneTapASet() {
        begin("1.1")
        val kinds = run()
        assertTrue(kinds.toString(), "effort" in kinds && "Racked" in kinds)
        assertTrue("the session came to its end: $kinds", kinds.last() == "Finish the session")
        assertTrue(ask(Look.Tally) is Screen.Tally)
        assertTrue(texts().toString(), sees("Back squat"))
    }

    @Test
    fun oddKindsOfSetsGoByTheSameKeys() {
        begin("1.2")
        val kinds = run()
        assertTrue(kinds.toString(), kinds.any { it.startsWith("Racked: next") })
        assertTrue(kinds.toString(), kinds.any { it == "Start the clock" })
        assertTrue(kinds.toString(), kinds.any { it == "Set down" })
        assertEquals("Finish the session", kinds.last())
    }

    @Test
    fun interruptedEverywhereItLosesNothing() {
        begin("1.3")
        var turns = 0
        var last = -1
        while (turns < 60) {
            val before = ask(Places.FLOOR)
            if (before !is Screen.Floor || before.floor.part == null) break
            recordNext(turns)
            if (turns % 5 == 2) {
                val saved = die()
                start(saved = saved)
            } else if (turns % 5 == 4) {
                rotate(if (turns % 2 == 0) "w914dp-h411dp-land-night-420dpi" else "w411dp-h914dp-port-night-420dpi")
            }
            val after = (ask(Places.FLOOR) as? Screen.Floor)?.floor?.call?.toGo
            assertTrue("$turns: $after", after != null)
            last = turns
            pass(30)
            turns += 1
        }
        assertTrue("only $last", last > 15)
        tap("Finish the session")
        assertTrue(ask(Look.Tally) is Screen.Tally)
    }

    @Test
    fun aNewFloorChangesViewsInPlace() {
        begin("1.1")
        while (recordNext(2) != "effort") pass(200)
        tap("Undo")
        tap("Redo")
        pass(3)
        tap("Undo")
        val known: MutableSet<android.view.View> = Collections.newSetFromMap(IdentityHashMap())
        known.addAll(everything(root))
        tap("+")
        tap("−")
        assertEquals("effort", recordNext(2))
        repeat(5) { pass(1) }
        tap("Undo")
        val made = everything(root).filterNot { it in known }
        assertTrue("made $made", made.isEmpty())
    }

    private fun everything(of: android.view.View): List<android.view.View> =
        listOf(of) + if (of is android.view.ViewGroup) (0 until of.childCount).flatMap { everything(of.getChildAt(it)) } else emptyList()

    @Test
    fun theFigureStepsAndIsWhatIsRecorded() {
        begin("1.1")
        assertTrue(sees("3 reps"))
        tap("−")
        assertTrue(texts().toString(), sees("2 reps"))
        tap("Racked")
        tap("Undo")
        assertTrue(hasKey("Redo"))
    }

    @Test
    fun aRestCountsOnTheScreenAndByItselfEnds() {
        begin("1.1")
        tap("Racked")
        assertTrue(texts().toString(), sees("1:00"))
        pass(10)
        assertTrue(texts().toString(), sees("0:50"))
        tap("+20 s")
        assertTrue(texts().toString(), sees("1:10"))
        tap("Racked")
        assertTrue(texts().toString(), sees("1:00"))
    }

    @Test
    fun aSecondTapOnTheSameSetIsRefusedInWords() {
        begin("1.1")
        val key = key("Racked")
        key.performClick()
        key.performClick()
        settle()
        assertTrue(texts().toString(), sees("recorded already"))
        tap("Understood")
        assertFalse(sees("recorded already"))
    }

    @Test
    fun everyKeySaysWhatItDoes() {
        begin("1.1")
        repeat(3) { recordNext(it); pass(60) }
        for (key in keys()) {
            assertNotNull(key.contentDescription)
            assertTrue("${key.text}", key.contentDescription.isNotEmpty())
            val node = key.createAccessibilityNodeInfo()
            assertTrue(node.isClickable || !node.isEnabled)
            assertEquals("android.widget.Button", node.className)
        }
    }

    @Test
    fun keysAreHighAndApart() {
        begin("1.1")
        repeat(4) { recordNext(it); pass(60) }
        val density = activity.resources.displayMetrics.density
        // What records nothing may be smaller.
        val places = keys().filter { it.text != "Go to…" }.map { key ->
            android.graphics.Rect().also { r ->
                val at = IntArray(2).also(key::getLocationInWindow)
                r.set(at[0], at[1], at[0] + key.width, at[1] + key.height)
            } to key.text
        }
        for ((place, name) in places) assertTrue("$name ${place.height()}", place.height() >= 64 * density - 1)
        val hand = places.filter { it.first.top > root.height / 2 }
        for ((one, a) in hand) for ((other, b) in hand) {
            if (one === other) continue
            val apart = android.graphics.Rect(one).apply { inset((-11.5 * density).toInt(), (-11.5 * density).toInt()) }
            assertFalse("$a and $b", android.graphics.Rect.intersects(apart, other))
        }
    }
}
