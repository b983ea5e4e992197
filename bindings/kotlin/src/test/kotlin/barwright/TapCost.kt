package barwright

import barwright.core.Engine
import barwright.core.EngineException
import barwright.core.Look
import barwright.testing.Ask
import barwright.testing.nativeNanos
import barwright.testing.scriptedSession
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File

/**
 * What the way across costs: each tap of the demo's session, once from Rust and once from here, on
 * two engines in memory that stand alike, so that no disk is in it. `bindings/measure` runs it on a
 * library built as the one that ships and prints what it writes; it is no part of the check.
 */
class TapCost {
    @Test
    fun `a tap from here beside the same tap from Rust`() {
        val script = File(System.getProperty("barwright.vectors"), "demo-session.json").readText()
        val session = scriptedSession(script)
        val taps = session.steps.mapNotNull { it.ask as? Ask.Dispatch }
        val native = mutableListOf<Double>()
        val here = mutableListOf<Double>()
        // The first rounds are for the compiler of the JVM.
        for (round in 0 until WARM_UP + ROUNDS) {
            val inRust = Engine.inMemory(session.locale)
            val fromHere = Engine.inMemory(session.locale)
            for (tap in taps) {
                val nanos = try {
                    nativeNanos(inRust, tap.intent, tap.reading)
                } catch (_: EngineException.Refused) {
                    continue
                }
                val start = System.nanoTime()
                fromHere.dispatch(tap.intent, tap.reading)
                val took = System.nanoTime() - start
                if (round >= WARM_UP) {
                    native += nanos.toLong() / 1e3
                    here += took / 1e3
                }
            }
            val last = taps.last().reading
            assertEquals(
                inRust.view(Look.Tally, last),
                fromHere.view(Look.Tally, last),
            )
            inRust.shutDown()
            fromHere.shutDown()
        }
        assertTrue(native.isNotEmpty())
        val over = here.zip(native) { one, other -> one - other }
        File(System.getProperty("barwright.cost")).writeText(
            "a tap, %d times: %.0f µs from Rust, %.0f µs from Kotlin (medians)%n".format(
                native.size, native.middle(), here.middle(),
            ) + "the way across: %.0f µs (median), %.0f µs (nine of ten); at most 100 µs is wanted%n".format(
                over.middle(), over.sorted()[over.size * 9 / 10],
            ),
        )
    }

    private fun List<Double>.middle() = sorted()[size / 2]

    private companion object {
        const val WARM_UP = 30
        const val ROUNDS = 30
    }
}
