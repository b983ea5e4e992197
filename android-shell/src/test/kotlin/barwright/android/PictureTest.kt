package barwright.android

import barwright.core.Look
import org.junit.Assert.assertTrue
import org.junit.Test
import org.robolectric.annotation.Config
import org.robolectric.RuntimeEnvironment
import org.robolectric.shadows.ShadowAlarmManager
import barwright.core.Screen

/** A picture of every screen, to be looked at. */
class PictureTest : PhoneTest() {
    private fun all(kind: String) {
        ShadowAlarmManager.setCanScheduleExactAlarms(true)
        demoStore()
        start()
        picture("$kind-today")
        for ((name, look) in listOf(
            "weeks" to Look.Weeks,
            "balance" to Look.Balance(null),
            "balance-4" to Look.Balance(4u),
            "lift" to Look.Lift("back-squat", 0u),
            "equipment" to Look.Equipment,
            "plan" to Look.Plan(null, null),
            "plan-week" to Look.Plan(null, 2u),
            "plan-faults" to Look.Plan(demo("plan.toml").replace("sets = 3\nreps = 3", "sets = 3\nrepz = 3").replace("rpe = 8\n", "rpe = 12\n"), null),
        )) {
            activity.go(look)
            settle()
            picture("$kind-$name")
        }
        tap("Go to…")
        picture("$kind-places")
        tap("Today")
        tap("Begin")
        tap("Racked")
        pass(20)
        picture("$kind-resting")
        repeat(3) { if (hasKey("Racked")) { tap("Racked"); pass(100) } }
        picture("$kind-floor-bar")
        tap("The bar holds…")
        picture("$kind-holds")
        tap("Back")
        var turns = 0
        while (hasKey("Racked") && !hasKey("Racked, no call") && turns < 8) {
            tap("Racked")
            pass(170)
            turns += 1
        }
        picture("$kind-floor-effort")
        tap("2")
        pass(30)
        picture("$kind-effort-rest")
        tap("Why this load?")
        picture("$kind-why")
        tap("More…")
        picture("$kind-more")
        tap("Notes and set-up…")
        picture("$kind-notes")
        tap("Back")
        tap("It ended otherwise…")
        picture("$kind-ended")
        tap("Back")
        tap("More…")
        tap("Finish the session here")
        picture("$kind-tally")
        assertTrue(ask(Look.Tally) is Screen.Tally)
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
