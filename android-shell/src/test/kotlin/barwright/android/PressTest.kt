package barwright.android

import barwright.core.Intent
import barwright.core.Look
import barwright.core.Screen
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test

/**
 * How many touches the ways take that a lifter goes most or dreads most. What the device's own
 * keyboard takes is not counted: a number or a word to look for.
 */
class PressTest : FloorTest() {
    private fun go(place: String) {
        tap("Go to…")
        tap(place)
    }

    /** What stands in a form's line, typed. */
    private fun typed(row: String, text: String) {
        touch(keys().first { it.contentDescription == "Type $row" })
        type(row, text)
    }

    private fun atMost(touches: Int, what: String) {
        println("$what: ${this.touches} touches")
        assertTrue("$what takes ${this.touches} touches", this.touches <= touches)
    }

    /** From an empty phone: a gym and a plan of three exercises made by hand, to the first set. */
    @Test
    fun fromTheFirstStartToTheFirstSet() {
        start()
        go("Equipment")
        tap("New gym, empty, kg")
        touch(keyOf("Add a bar", "Long bar"))
        touch(keyOf("Add a size of plate", "A small set"))
        for (support in listOf("Rack", "Bench", "Pull-up bar")) touch(keyOf(support, "Here"))
        tap("Use it")
        go("Today")
        tap("Make a plan")
        touch(keyOf("A", "Open"))
        for ((words, name) in listOf("back squat" to "Back squat", "bench press" to "Bench press", "pull-up" to "Pull-up")) {
            tap("Add an exercise")
            typed("Look for", words)
            touch(keyOf(name, "Add it"))
        }
        touch(keyOf("Back squat", "Open"))
        typed("Reps", "5")
        typed("Load", "80 kg")
        tap("Back")
        tap("Back")
        tap("See it")
        tap("Adopt")
        go("Today")
        tap("Begin")
        assertEquals("Back squat", floor.call.exercise)
        assertTrue(texts().toString(), hasKey("More…"))
        atMost(60, "a gym, a plan and its first set")
    }

    /** A gym without a barbell: chosen, the session fitted to it, its first set. */
    @Test
    fun aHotelsGymFitsTheSession() {
        prepare()
        recorded(Intent.AddGym(HOTEL))
        start()
        go("Equipment")
        tap(keys().first { "Hotel" in it.text }.text.toString())
        go("Today")
        tap("Fit")
        val today = (ask(Look.Today(null, null)) as Screen.Today).today
        assertTrue("$today", today.rows.none { it.warns })
        tap("Begin")
        assertTrue(texts().toString(), hasKey("More…"))
        atMost(8, "a hotel's gym and the session fitted to it")
    }

    /** A max changed, with the loads that move shown before it counts. */
    @Test
    fun aMaxIsChangedWithItsLoadsShown() {
        prepare()
        start()
        tap("Maxes")
        touch(keys().first { it.contentDescription == "Bench press: 5 percent less; nothing counts yet" })
        assertTrue(texts().toString(), texts().any { it.startsWith("Week 1") })
        tap("Take 92.5 kg")
        atMost(4, "a max changed with its loads shown")
    }

    /** As many as possible where four were called: one touch says eight, one records it. */
    @Test
    fun eightWhereFourWereCalledTakesTwo() {
        prepare(plan = OPEN)
        start()
        tap("Begin")
        recordUntil { it.thumb.beside.any { key -> key.id == "near-8" } }
        assertEquals("4", floor.thumb.figure!!.text)
        touches = 0
        tap("8 reps")
        assertTrue(texts().toString(), sees("8 reps"))
        recordNext()
        atMost(2, "eight where four were called")
        assertTrue("${done()}", done().any { "8" in it })
    }

    /** What is far from the call is typed on a pad that the thumb reaches. */
    @Test
    fun whatIsFarFromTheCallIsTyped() {
        prepare(plan = OPEN)
        start()
        tap("Begin")
        recordUntil { it.thumb.beside.any { key -> key.id == "near-8" } }
        touches = 0
        tap("4 reps")
        picture("pad")
        tap("1")
        tap("9")
        tap("⌫")
        tap("7")
        assertTrue(texts().toString(), sees("17 reps"))
        // Another tap than the record's.
        tap("That is it")
        assertTrue(texts().toString(), sees("17 reps") && hasWide)
        atMost(6, "seventeen, with one digit rubbed out")
    }

    private companion object {
        val HOTEL = """
            name = "Hotel"
            unit = "kg"
            also = ["bench"]
            [[dumbbells]]
            name = "Rack"
            from = "5 kg"
            to = "25 kg"
            step = "2.5 kg"
        """.trimIndent()
        val OPEN = """
            name = "Base"
            weeks = 4
            [[session]]
            name = "Lower"
            [[session.exercise]]
            name = "Back squat"
            sets = 2
            reps = "4 or more, stop at 1 left"
            load = "100 kg"
            ramp = "none"
        """.trimIndent()
    }
}
