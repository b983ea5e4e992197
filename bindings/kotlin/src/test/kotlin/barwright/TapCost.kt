package barwright

import barwright.core.Action
import barwright.core.Answer
import barwright.core.Engine
import barwright.core.FloorScreen
import barwright.core.Intent
import barwright.core.Reading
import barwright.core.Screen
import barwright.testing.timedAct
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File
import java.lang.management.ManagementFactory

/**
 * What the way across costs: taps of a lifter with ten years of records behind them, in memory, so
 * that no disk is in it. Of each tap that part counts which the engine itself did not take. It is run
 * by `bindings/measure` on a library built as the one that ships, and is no part of the check.
 */
class TapCost {
    private val plan = File(System.getProperty("barwright.vectors"), "../bench/src/plan.toml").readText()
    private val processor = ManagementFactory.getThreadMXBean()
    private val engine = Engine.inMemory("en")
    private var wallMs = 0L
    private var sets = 0
    private val inside = mutableListOf<Double>()
    private val over = mutableListOf<Double>()

    private fun now() = Reading(wallMs, 0, wallMs, "first")

    /** Ten years of three sessions a week, then a few weeks that are measured. */
    @Test
    fun `a tap with ten years of records behind it`() {
        for (week in 0 until TEN_YEARS + MEASURED) {
            wallMs = (BEGINS + week * 7L) * DAY_MS
            if (week % WEEKS == 0) engine.dispatch(Intent.AdoptPlan(plan, null, week > 0, false), now())
            if (week == 0) {
                for ((field, text) in FACTS) engine.dispatch(Intent.Write(field, text), now())
            }
            for (session in 0 until SESSIONS) {
                wallMs = (BEGINS + week * 7L + session * 2L) * DAY_MS + 18 * 3_600_000L
                val row = "${week % WEEKS + 1}.${session + 1}"
                through(engine.dispatch(Intent.Begin(row, null), now()), week >= TEN_YEARS)
            }
        }
        assertTrue("$sets sets", sets > SETS)
        val all = inside.zip(over) { one, other -> one + other }
        File(System.getProperty("barwright.cost")).writeText(
            "a tap after %d sets, %d times, in memory: %s in all, %s of it in Rust%n".format(
                sets, over.size, all.said(), inside.said(),
            ) + "the way across: %s; 100 µs nine times of ten are the most that is wanted%n".format(over.said()),
        )
        engine.shutDown()
    }

    private fun through(begun: Answer, measured: Boolean) {
        var floor = (begun.screen as Screen.Floor).floor
        while (true) {
            wallMs += 45_000 + (floor.rest?.leftMs?.coerceAtLeast(0) ?: 0)
            val answer = if (measured) timed(next(floor)) else engine.act(next(floor), now())
            sets += 1
            floor = (answer.screen as? Screen.Floor)?.floor ?: return
        }
    }

    /** What most taps are: the wide key, or the effort that was called. */
    private fun next(floor: FloorScreen): Action =
        floor.thumb.main?.action ?: floor.thumb.effort.let { it[it.size / 2].key.action }

    /** By this thread's processor time: what else the machine does is not in it. */
    private fun timed(action: Action): Answer {
        val reading = now()
        val start = processor.currentThreadCpuTime
        val timed = timedAct(engine, action, reading)
        val took = processor.currentThreadCpuTime - start
        inside += timed.nanos.toLong() / 1e3
        over += (took - timed.nanos.toLong()) / 1e3
        return timed.answer
    }

    private fun List<Double>.said(): String {
        val sorted = sorted()
        return "%.0f µs (median), %.0f µs (nine of ten)".format(sorted[size / 2], sorted[size * 9 / 10])
    }

    private companion object {
        const val DAY_MS = 86_400_000L
        const val WEEKS = 12
        const val SESSIONS = 3
        const val TEN_YEARS = 516
        const val MEASURED = 12
        const val SETS = 70_000

        /** A Monday, so many days after 1970-01-01, ten years before today's. */
        const val BEGINS = 20_780L - 7 * TEN_YEARS
        val FACTS = listOf(
            "body-mass" to "82.4 kg", "max:back-squat" to "142.5 kg", "max:bench-press" to "97.5 kg",
            "max:deadlift" to "175 kg", "max:overhead-press" to "62.5 kg",
        )
    }
}
