package barwright

import barwright.core.Action
import barwright.core.Draft
import barwright.core.Effect
import barwright.core.Engine
import barwright.core.EngineException
import barwright.core.HapticKind
import barwright.core.HowEnded
import barwright.core.Intent
import barwright.core.Look
import barwright.core.RefusalCode
import barwright.core.Screen
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test

/** The way of one set, its fields read by hand: JSON that goes in and comes out the same would not notice two swapped. */
class SliceTest {
    @Test
    fun `one set from a look to its rest`() {
        val engine = engineWithPlan()
        val today = (engine.view(Look.Today(null, null), reading()).screen as Screen.Today).today
        assertEquals("Legs", today.title)
        assertEquals(listOf(1u, 2u), today.rows.map { it.depth.toUInt() }.distinct())
        val begin = today.keys.first { it.enabled }
        val action = begin.action as Action.Do
        assertTrue(action.intent is Intent.Begin)
        assertNull(action.session)

        val begun = engine.act(action, reading(10_000))
        assertEquals(Look.Floor(Draft()), begun.look)
        assertNull(begun.wakesAt)
        assertEquals(listOf<Effect>(Effect.KeepAwake(true)), begun.effects)
        val floor = (begun.screen as Screen.Floor).floor
        assertEquals("0.0.0@2", floor.part)
        assertEquals("100 kg", floor.bar.total)
        assertEquals("Back squat", floor.call.exercise)
        assertTrue(floor.bar.drawn)
        assertTrue(floor.bar.plates.isNotEmpty())
        assertNull(floor.rest)

        val done = engine.dispatch(
            Intent.Record(floor.part, 5u, 3u, HowEnded.AS_CALLED, 0u, false),
            reading(60_000),
        )
        assertEquals(Effect.Haptic(HapticKind.RECORDED), done.effects[0])
        val ring = done.effects[1] as Effect.RingAt
        assertEquals(reading(60_000 + 180_000).wallMs, ring.wallMs)
        assertEquals(reading(60_000 + 180_000).bootMs, ring.bootMs)
        assertEquals(reading(61_000).wallMs, done.wakesAt)
        val rest = (done.screen as Screen.Floor).floor.rest!!
        assertEquals(180_000L, rest.leftMs)
        assertEquals("3:00", rest.text)

        val late = assertThrows(EngineException.Refused::class.java) {
            engine.dispatch(
                Intent.Record(floor.part, 5u, 3u, HowEnded.AS_CALLED, 0u, false),
                reading(61_000),
            )
        }
        assertEquals(RefusalCode.STALE, late.code)
        assertTrue(late.reason.isNotEmpty())
        assertNull(late.ask)
        // A key knows its session, and what is shown after it.
        val longer = rest.longer.action as Action.Do
        assertEquals(2uL, longer.session)
        assertEquals(Look.Floor(Draft()), longer.then)
        val another = assertThrows(EngineException.Refused::class.java) {
            engine.act(longer.copy(session = 1uL), reading(61_000))
        }
        assertEquals(RefusalCode.STALE, another.code)

        // A draft left at its defaults is the floor as it stands.
        val look = engine.view(Look.Floor(Draft()), reading(61_000)).screen as Screen.Floor
        assertEquals("0.1.0@2", look.floor.part)
        assertEquals(179_000L, look.floor.rest!!.leftMs)
        assertNotNull(look.floor.thumb.undo)
        engine.shutDown()
    }

    @Test
    fun `versions are told`() {
        val versions = Engine.inMemory("en-GB").versions()
        assertTrue(versions.program.isNotEmpty())
        assertTrue(versions.contract >= 1u && versions.store >= 1u)
    }
}
