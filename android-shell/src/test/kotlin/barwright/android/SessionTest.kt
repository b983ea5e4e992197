package barwright.android

import android.content.Intent as Call
import barwright.android.screen.Places
import barwright.core.Intent
import barwright.core.Look
import barwright.core.Screen
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test

/** Three whole sessions by touch, with the real core. */
class SessionTest : FloorTest() {
    /** Every tap that the evening takes, one a part, with something done in between. */
    private fun wholeEvening(between: (Int) -> Unit = {}): List<String> {
        val taps = ArrayList<String>()
        while (floor.part != null) {
            between(taps.size)
            taps.add(recordNext())
            pass(45)
            assertTrue("it never ends: $taps", taps.size < 80)
        }
        tap("Finish the session")
        assertTrue(texts().toString(), sees("One of each"))
        return taps
    }

    @Test
    fun anOrdinarySessionIsOneTapASet() {
        begin("1.1", FULL_GYM)
        var taps = 0
        while (floor.part != null && "Choose a load" !in floor.bar.line) {
            val before = floor.part
            recordNext()
            taps += 1
            assertTrue("one tap did not do: ${texts()}", (ask(Places.FLOOR) as Screen.Floor).floor.part != before)
            pass(45)
        }
        assertTrue("only $taps", taps >= 15)
        // What the plan leaves open is chosen by the lifter.
        tap("More…")
        tap("Choose a load…")
        type("Load", "40 kg")
        while (floor.part != null) {
            recordNext()
            pass(45)
        }
        tap("Finish the session")
        assertTrue(texts().toString(), sees("Back squat") && sees("Set 1 of 3"))
    }

    @Test
    fun everyKindOfSetIsOneTapAPart() {
        beginEveryKind()
        val taps = wholeEvening()
        assertEquals(DONE, done())
        // A clock to start, 41 parts, and nothing else.
        assertEquals(taps.toString(), 42, taps.size)
        for (key in listOf("Start the clock", "Racked", "Done: next 2", "Done: last part", "Dropped to 30 kg", "Done", "2")) {
            assertTrue("$key in $taps", key in taps)
        }
        for (row in DONE) assertTrue("$row on screen", sees(row.substringBefore(",")))
    }

    @Test
    fun interruptedEverywhereItLosesNothing() {
        beginEveryKind()
        wholeEvening { turn ->
            val before = floor.part
            interrupt(turn)
            assertEquals("after interruption $turn: ${texts()}", before, floor.part)
        }
        assertEquals(DONE, done())
    }

    /** Something that comes between two taps. */
    private fun interrupt(turn: Int) {
        when (turn % 9) {
            0 -> {
                val saved = die()
                pass(20)
                start(saved = saved)
            }
            1 -> rotate("w914dp-h411dp-land-night-420dpi")
            2 -> {
                leave()
                pass(90)
                come()
            }
            3 -> rotate("w411dp-h914dp-port-notnight-420dpi")
            4 -> {
                // The battery is empty; the phone starts again some minutes later.
                val saved = die()
                clocks.wallMs += 240_000
                clocks.bootMs = 20_000
                clocks.bootId = "boot after $turn"
                broadcast(Call.ACTION_BOOT_COMPLETED)
                start(saved = saved)
            }
            5 -> if (floor.thumb.undo?.enabled == true) {
                tap("Undo")
                tap("Redo")
            }
            6 -> {
                clocks.wallMs += 5_400_000
                broadcast(Call.ACTION_TIME_CHANGED)
                clocks.wallMs -= 5_400_000
                broadcast(Call.ACTION_TIME_CHANGED)
            }
            7 -> {
                tap("More…")
                tap("Pause")
                // Killed while it is paused, and without a saved state.
                die()
                start()
                tap("Resume")
            }
            else -> {
                clocks.offsetMinutes = 0
                broadcast(Call.ACTION_TIMEZONE_CHANGED)
                clocks.offsetMinutes = 60
                tap("Set cut short…")
                val saved = die()
                start(saved = saved)
                tap("Back")
            }
        }
        // The floor is in front again, wherever the interruption led.
        if (ask(Places.FLOOR) is Screen.Floor && !hasKey("More…")) {
            activity.go(Places.FLOOR)
            settle()
        }
    }

    @Test
    fun aProcessThatDiesInAClusterComesBackInIt() {
        beginEveryKind()
        recordUntil { "block 2 of 3" in it.call.sentence }
        // The loop let the pause go by; do its block again.
        tap("Undo")
        assertTrue(texts().toString(), sees("block 1 of 3"))
        recordNext()
        assertTrue(texts().toString(), sees("0:25"))
        pass(10)
        val saved = die()
        clocks.pass(5_000)
        start(saved = saved)
        assertTrue(texts().toString(), sees("block 2 of 3") && sees("0:10") && sees("Pause in the set"))
        // And once more, with the phone itself.
        val again = die()
        clocks.wallMs += 4_000
        clocks.bootMs = 9_000
        clocks.bootId = "boot 8"
        broadcast(Call.ACTION_BOOT_COMPLETED)
        start(saved = again)
        assertTrue(texts().toString(), sees("block 2 of 3") && sees("0:06"))
        tap("Done: next 1")
        tap("Done: last part")
        recorded(Intent.Finish)
        assertTrue(done().toString(), "Set 1 of 1: 130 kg × 2 + 2 + 1" in done())
    }

    @Test
    fun whatWasDoneCanBeSeenOnEveryScreenAfterwards() {
        beginEveryKind()
        wholeEvening()
        for ((look, words) in listOf(
            Look.Lift("deadlift", 0u) to "130 kg",
            Look.Balance(null) to "Chest: 3 hard sets done, 3 planned",
            Look.Weeks to "One of each",
        )) {
            activity.go(look)
            settle()
            assertTrue("$look: ${texts()}", texts().any { it.contains(words, ignoreCase = true) })
        }
    }

    private companion object {
        /** What the tally says after one tap for each part, with two left where the call asks. */
        val DONE = """
            Box jump
            Speed set 1 of 1: bodyweight × 3
            Power clean
            Ramp set 1 of 1: 40 kg × 5
            Speed set 1 of 2: 57.5 kg × 1
            Speed set 2 of 2: 57.5 kg × 1
            Deadlift
            Ramp set 1 of 1: 80 kg × 5
            Set 1 of 1: 130 kg × 2 + 2 + 1
            Bench press
            Ramp set 1 of 3: 20 kg × 8
            Ramp set 2 of 3: 35 kg × 3
            Ramp set 3 of 3: 50 kg × 2
            Top set 1: 67.5 kg × 3, RPE 8
            Back-off set 2 of 2: 57.5 kg × 6
            Rear-foot-raised split squat
            Set 1 of 1, left: 16 kg × 8, 2 in reserve
            Set 1 of 1, right: 16 kg × 8, 2 in reserve
            Seated cable row
            Ramp set 1 of 2: 20 kg × 8
            Ramp set 2 of 2: 30 kg × 4
            Set 1 of 1: 40 kg × 8, 2 in reserve
            Overhead press
            Ramp set 1 of 1: 25 kg × 5
            Set 1 of 2: 45 kg × 5
            Set 2 of 2: 45 kg × 5
            Chin-up
            Set 1: bodyweight × 4
            Set 2: bodyweight × 4
            Leg extension
            Set 1 of 1: 40 kg × 12, 30 kg × 12, 25 kg × 12, 2 in reserve
            Lateral raise
            Set 1 of 1: 8 kg × 9 + 5
            Leg press
            Set 1 of 1: 100 kg × 10 + 3 + 3 + 3 + 1, 2 in reserve
            Dip
            Set 1 of 1: bodyweight × 6 + 5, 2 in reserve
            Leg curl
            Set 1: pin 7 × 12, 2 in reserve
            Set 2: pin 7 × 12, 2 in reserve
            Assisted pull-up
            Set 1 of 1: 20 kg assistance × 6, 2 in reserve
            Face pull
            Set 1 of 1: red band, doubled × 15
            Plank
            Set 1 of 1: bodyweight, 30 s
            Farmer's carry
            Set 1 of 1: 28 kg, 30 m
        """.trimIndent().lines()
    }
}
