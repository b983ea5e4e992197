package barwright

import barwright.core.Answer
import barwright.core.Draft
import barwright.core.Engine
import barwright.core.EngineException
import barwright.core.HowEnded
import barwright.core.Intent
import barwright.core.Look
import barwright.core.RefusalCode
import barwright.core.Screen
import barwright.core.recover
import barwright.testing.breakInside
import org.junit.Assert.assertEquals
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File
import java.util.concurrent.Callable
import java.util.concurrent.Executors

private val floor = Look.Floor(Draft())

/** Opening, giving up the file, the end, defects inside, many threads. */
class LifeTest {
    @Test
    fun `the file is given up and taken again by the next call`() {
        val path = freshPath()
        val engine = engineWithPlan(path)
        val before = engine.dispatch(Intent.Begin(null, null), reading())
        engine.suspend()
        engine.suspend()

        // Given up indeed: another engine can have it.
        val other = Engine.open(path, "en-GB")
        other.shutDown()

        assertEquals(before.screen, engine.view(floor, reading()).screen)
        engine.shutDown()
    }

    @Test
    fun `a second engine for the same file is refused`() {
        val path = freshPath()
        val first = engineWithPlan(path)
        val refused = assertThrows(EngineException.Storage::class.java) {
            Engine.open(path, "en-GB")
        }
        assertTrue(refused.reason, "has this file open" in refused.reason)
        assertEquals(path, refused.keptAt)
        // The first is none the worse for it.
        first.dispatch(Intent.Begin(null, null), reading())

        // While the file is given up another may have it; then it is the first that has to wait.
        first.suspend()
        val second = Engine.open(path, "en-GB")
        assertThrows(EngineException.Storage::class.java) { first.view(floor, reading()) }
        second.shutDown()
        assertTrue(first.view(floor, reading()).screen is Screen.Floor)
        first.shutDown()
    }

    @Test
    fun `after the end every call says so`() {
        val path = freshPath()
        val engine = engineWithPlan(path)
        engine.shutDown()
        val calls = listOf<() -> Unit>(
            { engine.dispatch(Intent.Wake, reading()) },
            { engine.view(floor, reading()) },
            { engine.suspend() },
            { engine.versions() },
            { engine.checkRecords() },
            { engine.backUp(freshPath()) },
            { engine.shutDown() },
        )
        for (call in calls) {
            val closed = assertThrows(EngineException.Closed::class.java) { call() }
            assertTrue(closed.reason.isNotEmpty())
        }
        Engine.open(path, "en-GB").shutDown()
    }

    @Test
    fun `records are checked, copied, and read back when they are damaged`() {
        val path = freshPath()
        val engine = engineWithPlan(path)
        engine.dispatch(Intent.AdoptPlan(PLAN.replace("Erg room", "Boat room")), reading())
        assertEquals(2uL, engine.checkRecords())
        val copy = freshPath()
        assertEquals(2uL, engine.backUp(copy))
        val there = assertThrows(EngineException.Storage::class.java) { engine.backUp(copy) }
        assertEquals(copy, there.keptAt)
        // An engine has it open.
        assertThrows(EngineException.Storage::class.java) { recover(path, "en-GB") }
        engine.shutDown()
        assertEquals(
            RefusalCode.ALREADY_SO,
            assertThrows(EngineException.Refused::class.java) { recover(path, "en-GB") }.code,
        )

        // As a failing disk would spoil it: no length changes.
        val bytes = File(copy).readText(Charsets.ISO_8859_1)
        assertTrue("Boat room" in bytes)
        File(copy).writeText(bytes.replace("Boat room", "Boat r0om"), Charsets.ISO_8859_1)
        val recovered = recover(copy, "en-GB")
        assertEquals(1uL, recovered.kept)
        assertTrue(recovered.reason.isNotEmpty())
        assertTrue("Boat r0om" in File(recovered.aside).readText(Charsets.ISO_8859_1))
        val back = Engine.open(copy, "en-GB")
        assertEquals("Erg room", (back.view(Look.Weeks, reading()).screen as Screen.Weeks).weeks.title)
        back.shutDown()
    }

    @Test
    fun `a defect inside is caught and the state read back from the log`() {
        val engine = engineWithPlan()
        val before = engine.dispatch(Intent.Begin(null, null), reading())
        repeat(3) {
            val broken = assertThrows(EngineException.Broken::class.java) { breakInside(engine) }
            assertTrue(broken.reason.isNotEmpty())
            assertTrue(broken.report.startsWith("For the makers: “barwright "))
            assertEquals(before.screen, engine.view(floor, reading()).screen)
        }
        val record = Intent.Record("0.0.0", null, null, HowEnded.AS_CALLED, 0u, false)
        val done = engine.dispatch(record, reading(60_000))
        assertEquals("0.1.0@2", (done.screen as Screen.Floor).floor.part)
        engine.shutDown()
        assertThrows(EngineException.Closed::class.java) { breakInside(engine) }
    }

    @Test
    fun `a defect in one thread leaves no lock behind for another`() {
        val engine = engineWithPlan()
        val threads = Executors.newFixedThreadPool(2)
        val broken = threads.submit(Callable { runCatching { breakInside(engine) } }).get()
        assertTrue(broken.exceptionOrNull() is EngineException.Broken)
        val seen = threads.submit(Callable { engine.view(Look.Weeks, reading()).screen }).get()
        assertTrue(seen is Screen.Weeks)
        threads.shutdown()
        engine.shutDown()
    }

    @Test
    fun `of the same tap from many threads one is recorded`() {
        val engine = engineWithPlan()
        engine.dispatch(Intent.Begin(null, null), reading())
        val threads = Executors.newFixedThreadPool(8)
        val taps = List(32) {
            Callable {
                runCatching {
                    val record = Intent.Record("0.0.0", null, 2u, HowEnded.AS_CALLED, 0u, false)
                    engine.dispatch(record, reading(60_000))
                }
            }
        }
        val results: List<Result<Answer>> = threads.invokeAll(taps).map { it.get() }
        threads.shutdown()
        assertEquals(1, results.count { it.isSuccess })
        for (refused in results.mapNotNull { it.exceptionOrNull() }) {
            assertEquals(RefusalCode.STALE, (refused as EngineException.Refused).code)
        }
        engine.shutDown()
    }
}
