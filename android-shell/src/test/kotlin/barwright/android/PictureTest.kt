package barwright.android

import barwright.core.Look
import org.junit.Assert.assertTrue
import org.junit.Test
import org.robolectric.annotation.Config
import org.robolectric.RuntimeEnvironment

/** A picture of every screen, to be looked at. */
class PictureTest : PhoneTest() {
    private fun all(kind: String) {
        prepare()
        start()
        picture("$kind-today")
        for ((name, look) in listOf(
            "weeks" to Look.Weeks,
            "balance" to Look.Balance(null),
            "lift" to Look.Lift("back-squat", 0u),
            "equipment" to Look.Equipment,
            "plan" to Look.Plan(null, null),
            "plan-faults" to Look.Plan(demo("plan.toml").replace("sets = 3\nreps = 3", "sets = 3\nrepz = 3"), null),
        )) {
            activity.go(look)
            settle()
            picture("$kind-$name")
        }
        tap("Go to…")
        picture("$kind-places")
        activity.go(Look.Today("1.1", null))
        settle()
        tap("Begin")
        tap("Racked")
        pass(20)
        picture("$kind-resting")
        tap("Racked")
        pass(65)
        tap("Understood".takeIf { hasKey(it) } ?: "Go to…")
        activity.go(barwright.android.screen.Places.FLOOR)
        settle()
        picture("$kind-floor-bar")
        repeat(5) { if (hasKey("Racked")) { tap("Racked"); pass(200) } }
        picture("$kind-floor-effort")
        tap("More…")
        picture("$kind-more")
        tap("Back")
        tap("It ended otherwise…")
        picture("$kind-ended")
        tap("Back")
        tap("More…")
        tap("Finish the session here")
        picture("$kind-tally")
        assertTrue(texts().isNotEmpty())
    }

    @Test
    fun dark() = all("dark")

    @Test
    @Config(qualifiers = "w411dp-h914dp-notnight-420dpi")
    fun light() = all("light")

    @Test
    fun largeText() {
        RuntimeEnvironment.setFontScale(2f)
        all("large")
    }

    @Test
    @Config(qualifiers = "de-rDE-w411dp-h914dp-night-420dpi")
    fun german() = all("german")

    @Test
    @Config(qualifiers = "w320dp-h568dp-night-xhdpi")
    fun small() = all("small")

    @Test
    @Config(qualifiers = "w914dp-h411dp-land-night-420dpi")
    fun landscape() = all("landscape")

    @Test
    @Config(qualifiers = "ar-rXB-ldrtl-w411dp-h914dp-night-420dpi")
    fun rightToLeft() = all("rtl")
}
