package barwright

import barwright.core.Draft
import barwright.core.Engine
import barwright.core.EngineException
import barwright.core.GuardChoice
import barwright.core.HowEnded
import barwright.core.Intent
import barwright.core.KitChoice
import barwright.core.Look
import barwright.core.Reading
import barwright.core.RefusalCode
import barwright.core.Screen
import barwright.core.SwapReason
import barwright.core.recover
import barwright.testing.Unreadable
import barwright.testing.intentFromJson
import barwright.testing.intentToJson
import org.junit.Assert.assertEquals
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File

/** Text that is hard on a reader: scripts, marks, zero bytes, nothing, very much. */
private val TEXTS = listOf(
    "", " ", "\u0000", "\u200B", "\uFEFF", "שלום", "مرحبا", "日本語", "नमस्ते", "🏋️‍♀️💪", "e\u0301\u0301\u0301",
    "\u202Etxet", "'; DROP TABLE event; --", "%s%n", "\n\r\t", "\uD83D\uDE80".repeat(10_000), "x".repeat(1_000_000),
)

/** Whatever comes in, an answer or an error of ours comes out, and the engine goes on. */
class BadInputTest {
    /** The code of a refusal; null when it was taken after all. Any other end fails the test. */
    private fun refusal(call: () -> Unit): RefusalCode? = try {
        call()
        null
    } catch (refused: EngineException.Refused) {
        assertTrue(refused.reason.isNotEmpty())
        refused.code
    }

    private fun running(): Engine =
        engineWithPlan().also { it.dispatch(Intent.Begin(null, null), reading()) }

    @Test
    fun `any text`() {
        val engine = running()
        for (text in TEXTS) {
            val intents = listOf(
                Intent.Write(text, text), Intent.Write("note", text), Intent.AdoptPlan(text),
                Intent.AddGym(text), Intent.ChooseGym(text), Intent.Begin(text, null),
                Intent.Swap(0u, text, SwapReason.WISH), Intent.ChangeLoad(0u, text, false, false),
                Intent.HoldBack(text, true), Intent.BarHolds(listOf(text, text)),
                Intent.Record(text, null, null, HowEnded.AS_CALLED, 0u, false),
                Intent.Correct(text, null, text, null, HowEnded.AS_CALLED, 0u),
            )
            for (intent in intents) {
                refusal { engine.dispatch(intent, reading()) }
                assertEquals(intent, intentFromJson(intentToJson(intent)))
            }
            val looks = listOf(
                Look.Lift(text, 0u), Look.Plan(text, null), Look.Today(text, null),
                Look.Floor(Draft(load = text, correct = text, panel = text)),
            )
            for (look in looks) refusal { engine.view(look, reading()) }
            refusal { engine.view(Look.Weeks, reading().copy(bootId = text)) }
        }
        assertTrue(engine.view(Look.Floor(Draft()), reading()).screen is Screen.Floor)
        engine.shutDown()
    }

    @Test
    fun `half of a character pair is stopped before it crosses`() {
        // Kotlin's strings can hold what no text can; UniFFI's own encoder refuses it.
        val engine = running()
        assertThrows(java.nio.charset.CharacterCodingException::class.java) {
            engine.dispatch(Intent.Write("note", "\uD83D"), reading())
        }
        assertTrue(engine.view(Look.Floor(Draft()), reading()).screen is Screen.Floor)
        engine.shutDown()
    }

    @Test
    fun `numbers at the edges`() {
        val engine = running()
        val most = UInt.MAX_VALUE
        val intents = listOf(
            Intent.Begin(null, 0u), Intent.Begin(null, most),
            Intent.Record(null, most, null, HowEnded.AS_CALLED, 0u, false),
            Intent.Record(null, null, UByte.MAX_VALUE, HowEnded.AS_CALLED, 0u, false),
            Intent.Record(null, null, null, HowEnded.AS_CALLED, most, false),
            Intent.Correct("4294967295.65535.255", most, null, null, HowEnded.PAIN, most),
            Intent.SkipExercise(most), Intent.Swap(most, "leg-press", SwapReason.PAIN),
            Intent.Postpone(most), Intent.TakeUp(most), Intent.AddSet(most),
            Intent.ChangeLoad(most, "100 kg", false, true), Intent.ChangeLoad(0u, "99999999999 kg", true, true),
            Intent.GuardedBy(most, GuardChoice.PINS), Intent.UseKit(most, listOf()),
            Intent.RestBy(Int.MIN_VALUE), Intent.RestBy(Int.MAX_VALUE),
        )
        for (intent in intents) {
            assertTrue("$intent", refusal { engine.dispatch(intent, reading()) } != null)
        }
        val looks = listOf(
            Look.Lift("back-squat", most), Look.Balance(0u), Look.Balance(most), Look.Plan(null, most),
            Look.Today(null, 0u), Look.Today(null, most), Look.Floor(Draft(amount = most, helped = most)),
        )
        for (look in looks) refusal { engine.view(look, reading()) }

        val clocks = listOf(
            Reading(Long.MIN_VALUE, 0, null, null), Reading(Long.MAX_VALUE, 0, null, null),
            Reading(0, 0, null, null), Reading(reading().wallMs, Int.MIN_VALUE, null, null),
            Reading(reading().wallMs, Int.MAX_VALUE, null, null),
            Reading(reading().wallMs, 0, Long.MIN_VALUE, "first"),
            Reading(reading().wallMs, 0, 0, "x".repeat(65)),
        )
        for (clock in clocks) {
            assertEquals("$clock", RefusalCode.BAD_READING, refusal { engine.dispatch(Intent.Wake, clock) })
            assertEquals("$clock", RefusalCode.BAD_READING, refusal { engine.view(Look.Weeks, clock) })
        }
        assertEquals(
            "0.0.0@2",
            (engine.view(Look.Floor(Draft()), reading()).screen as Screen.Floor).floor.part,
        )
        engine.shutDown()
    }

    @Test
    fun `empty and huge lists`() {
        val engine = running()
        for (count in listOf(0, 1, 300, 100_000)) {
            refusal { engine.dispatch(Intent.BarHolds(List(count) { "20 kg" }), reading()) }
            refusal { engine.dispatch(Intent.UseKit(0u, List(count) { KitChoice.BELT }), reading()) }
        }
        assertEquals(
            "a bar of a hundred thousand plates",
            true, refusal { engine.dispatch(Intent.BarHolds(List(100_000) { "20 kg" }), reading()) } != null,
        )
        assertTrue(engine.view(Look.Floor(Draft()), reading()).screen is Screen.Floor)
        engine.shutDown()
    }

    @Test
    fun `files that are very long or very deep`() {
        val engine = running()
        val files = listOf(
            "[[session]]\nname = \"x\"\n".repeat(20_000),
            "a = " + "[".repeat(200_000),
            "a = " + "{a=".repeat(200_000),
            "a" + ".a".repeat(200_000) + " = 1",
            "[" + "a.".repeat(100_000) + "a]",
            "name = \"" + "x".repeat(3_000_000) + "\"",
        )
        for (file in files) {
            assertEquals(RefusalCode.FAULTS, refusal { engine.dispatch(Intent.AdoptPlan(file), reading()) })
            assertEquals(RefusalCode.FAULTS, refusal { engine.dispatch(Intent.AddGym(file), reading()) })
            refusal { engine.view(Look.Plan(file, null), reading()) }
        }
        engine.shutDown()
    }

    @Test
    fun `paths that can't be opened`() {
        val engine = running()
        val folder = freshFolder()
        val text = File(folder, "shopping.txt").apply { writeText("eggs, oats, milk\n".repeat(100)) }
        val paths = listOf(
            "", folder.path, File(folder, "no/such/folder/log.db").path, "/proc/version/log.db",
            text.path, File(folder, "a\u0000b").path, File(folder, "x".repeat(5_000)).path,
        )
        for (path in paths) {
            val error = assertThrows(path, EngineException.Storage::class.java) {
                Engine.open(path, "en-GB")
            }
            assertTrue(error.reason.isNotEmpty())
            val copy = assertThrows(path, EngineException.Storage::class.java) { engine.backUp(path) }
            assertTrue(copy.reason.isNotEmpty())
            // Nothing there, or nothing of ours: neither is touched.
            val none = assertThrows(path, EngineException::class.java) { recover(path, "en-GB") }
            assertTrue("$none", none is EngineException.Storage || none is EngineException.Refused)
        }
        assertEquals("eggs, oats, milk\n".repeat(100), text.readText())
        engine.shutDown()
    }

    @Test
    fun `a path in any script`() {
        for (name in listOf("журнал.db", "日誌 🏋️.db", "שלום.db", "a b'c\"d%20?.db")) {
            val path = File(freshFolder(), name).path
            engineWithPlan(path).shutDown()
            assertTrue(path, File(path).exists())
            val engine = Engine.open(path, "en-GB")
            val weeks = (engine.view(Look.Weeks, reading()).screen as Screen.Weeks).weeks
            assertEquals("Erg room", weeks.title)
            engine.shutDown()
        }
    }

    @Test
    fun `a locale that is not known writes a point and kilograms`() {
        for (locale in TEXTS + listOf("xx-YY", "en-GB", "C", "tlh")) {
            val engine = engineWithPlan(locale = locale)
            val begun = engine.dispatch(Intent.Begin(null, null), reading()).screen as Screen.Floor
            assertEquals("100 kg", begun.floor.bar.total)
            engine.shutDown()
        }
    }

    @Test
    fun `what is no intent is told as such`() {
        for (json in TEXTS + listOf("{}", "null", "\"nothing\"", "{\"begin\":{\"minutes\":-1}}")) {
            assertThrows(Unreadable::class.java) { intentFromJson(json) }
        }
    }
}
