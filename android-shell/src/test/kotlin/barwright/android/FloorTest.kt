package barwright.android

import barwright.android.screen.Places
import barwright.core.FloorScreen
import barwright.core.Look
import barwright.core.Screen
import org.junit.Assert.assertTrue
import java.io.File

/** A session that is worked by touch. */
abstract class FloorTest : PhoneTest() {
    val floor: FloorScreen get() = (ask(Places.FLOOR) as Screen.Floor).floor

    /** A session of the demo's plan. */
    fun begin(session: String? = null, gym: String = demo("gym.toml")) {
        prepare(gym)
        start()
        if (session != null) {
            activity.go(Look.Today(session, null))
            settle()
        }
        tap("Begin")
        assertTrue(texts().toString(), hasKey("More…"))
    }

    /** The evening with every kind of set. */
    fun beginEveryKind() {
        prepare(gym = FULL_GYM, plan = File("src/test/plans/every-kind.toml").readText())
        if (running) activity.go(Look.Today(null, null)) else start()
        settle()
        tap("Begin")
        assertTrue(texts().toString(), hasKey("More…"))
    }

    /** There is a wide key that records. */
    val hasWide: Boolean get() = hasKey("Racked") || hasKey("Done")

    /** What it says: nothing is racked where there is no rack. */
    val wide: String get() = if (hasKey("Racked")) "Racked" else "Done"

    /** Records whatever is next the way most taps do: one tap. Answers the key's label. */
    fun recordNext(): String {
        val thumb = floor.thumb
        val label = thumb.main?.label ?: thumb.effort.first { it.key.id == "left-2" }.key.label
        tap(label)
        return label
    }

    /** Taps as [recordNext] does until the floor is at what `there` looks for. */
    fun recordUntil(there: (FloorScreen) -> Boolean) {
        repeat(80) {
            if (there(floor)) return
            recordNext()
            pass(45)
        }
        throw AssertionError("never there: ${texts()}")
    }

    /** What the tally says was done. */
    fun done(): List<String> = (ask(Look.Tally) as Screen.Tally).tally.done
        .map { row -> listOf(row.text, row.detail).filter { it.isNotEmpty() }.joinToString(", ") }

    companion object {
        /** The demo's cellar with what it lacks. */
        val FULL_GYM = File("src/test/plans/gym.toml").readText()
    }
}
