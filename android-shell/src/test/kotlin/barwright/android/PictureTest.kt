package barwright.android

import android.app.NotificationManager
import android.graphics.Bitmap
import android.graphics.Canvas
import barwright.core.Action
import barwright.core.Edit
import barwright.core.FloorScreen
import barwright.core.FormOf
import barwright.core.Intent
import barwright.core.Key
import barwright.core.Look
import org.junit.Assert.assertTrue
import org.junit.Test
import org.robolectric.annotation.Config
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadows.ShadowAlarmManager
import barwright.core.Screen
import java.io.File

/** A picture of every screen, to be looked at. */
class PictureTest : FloorTest() {
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
            "care" to Look.Care,
            "start" to Look.Form(FormOf.START, "", ""),
            "maxes" to Look.Form(FormOf.MAXES, "", ""),
            "exercises" to Look.Form(FormOf.EXERCISES, "", ""),
            "records" to Look.Form(FormOf.RECORDS, "", ""),
            "plan" to Look.Plan(null, null),
            "plan-week" to Look.Plan(null, 2u),
            "plan-faults" to Look.Plan(demo("plan.toml").replace("sets = 3\nreps = 3", "sets = 3\nrepz = 3").replace("rpe = 8\n", "rpe = 12\n"), null),
        )) {
            activity.go(look)
            settle()
            picture("$kind-$name")
            if (look is Look.Weeks) {
                tap(activity.getString(R.string.more_keys))
                picture("$kind-weeks-more")
            }
        }
        tap(activity.getString(R.string.places))
        picture("$kind-places")
        tap(activity.getString(R.string.place_today))
        tapNamed("begin")
        tapNamed("record")
        pass(20)
        picture("$kind-resting")
        repeat(3) { if (named("record") != null) { tapNamed("record"); pass(100) } }
        picture("$kind-floor-bar")
        tapNamed("holds")
        picture("$kind-holds")
        tapNamed("close")
        var turns = 0
        while (named("record") != null && named("uncalled") == null && turns < 8) {
            tapNamed("record")
            pass(40)
            turns += 1
        }
        picture("$kind-floor-effort")
        tapNamed("left-2")
        pass(30)
        picture("$kind-effort-rest")
        tap(activity.getString(R.string.why_this_load))
        picture("$kind-why")
        tapNamed("more")
        picture("$kind-more")
        tapNamed("notes")
        picture("$kind-notes")
        tapNamed("close")
        tapNamed("ended")
        picture("$kind-ended")
        tapNamed("close")
        tapNamed("more")
        tapNamed("finish")
        picture("$kind-tally")
        assertTrue(ask(Look.Tally) is Screen.Tally)
    }

    /** The forms that a few taps lead to, the first few of each kind. */
    private fun forms(kind: String) {
        demoStore()
        start()
        val waiting = ArrayDeque(listOf(Look.Today(null, null), Look.Weeks, Look.Equipment, Look.Lift("back-squat", 0u), Look.Form(FormOf.EXERCISES, "", "")))
        val seen = HashSet<Look>()
        val drawn = HashMap<FormOf, Int>()
        val opened = HashSet<FormOf>()
        while (waiting.isNotEmpty()) {
            val look = waiting.removeFirst()
            if (!seen.add(look)) continue
            activity.go(look)
            settle()
            if (look is Look.Form) {
                val count = drawn.getOrDefault(look.of, 0)
                if (count == A_FEW) continue
                drawn[look.of] = count + 1
                picture("$kind-${look.of.name.lowercase()}-$count")
            }
            // The last way to begin a draft is the fullest: a copy of what stands.
            for (key in keysOf(ask(look)).asReversed()) when (val action = key.action) {
                is Action.Show -> if (action.look is Look.Form) waiting.addLast(action.look)
                is Action.Do -> (action.intent as? Intent.Edit)?.takeIf { it.edit is Edit.Open && opened.add(it.of) }?.let {
                    recorded(it)
                    waiting.addLast(action.then ?: Look.Form(it.of, "", ""))
                }
            }
        }
        for (of in listOf(FormOf.GYM, FormOf.PLAN, FormOf.SESSION, FormOf.LIKED, FormOf.EXERCISES)) assertTrue("$of among $drawn", of in drawn)
    }

    private fun keysOf(screen: Screen): List<Key> = when (screen) {
        is Screen.Today -> screen.today.keys + screen.today.rows.flatMap { it.keys }
        is Screen.Weeks -> screen.weeks.keys + screen.weeks.weeks.flatMap { week -> week.rows.flatMap { it.keys } }
        is Screen.Equipment -> screen.equipment.keys + screen.equipment.gyms + screen.equipment.rows.flatMap { it.keys }
        is Screen.Lift -> screen.lift.keys
        is Screen.Form -> screen.form.keys + screen.form.rows.flatMap { it.keys }
        else -> emptyList()
    }

    /** What is seldom on the floor, and the words over it. */
    @Test
    fun kinds() {
        ShadowAlarmManager.setCanScheduleExactAlarms(true)
        start()
        picture("kinds-first-start")
        beginEveryKind()
        fun at(name: String, there: (FloorScreen) -> Boolean) {
            recordUntil(there)
            picture("kinds-$name")
        }
        at("clock") { it.rest?.label == "Next start" }
        recordUntil { "block 1 of 3" in it.call.sentence }
        recordNext()
        pass(5)
        picture("kinds-cluster")
        at("side") { "left side" in it.call.sentence }
        at("tempo") { it.call.manner.isNotEmpty() }
        tap("More…")
        tap("A partner taps the reps…")
        tap("The first rep begins")
        picture("kinds-pace")
        tap("Undo the last tap")
        tap("Back")
        at("drop") { "drop 1" in it.call.sentence }
        at("range") { "lower half" in it.call.sentence }
        at("short-part") { "mini-set 2" in it.call.sentence }
        at("stack") { it.bar.line.isNotEmpty() && !it.bar.drawn && it.thumb.effort.isNotEmpty() }
        recordUntil { it.call.exercise == "Plank" }
        pass(300)
        tap("Start the hold")
        repeat(9) { pass(1) }
        picture("kinds-hold")
        tap("Done")
        val saved = die()
        clocks.wallMs += 20_000
        clocks.bootMs = 20_000
        clocks.bootId = "boot 9"
        start(saved = saved)
        picture("kinds-restarted")
        val key = key("Done")
        key.performClick()
        key.performClick()
        settle()
        picture("kinds-refused")
        tap("Understood")
        tap("More…")
        tap("Pause")
        picture("kinds-paused")
    }

    /** What is said once about the device, and when the file is damaged. */
    @Test
    fun words() {
        shadowOf(app.getSystemService(NotificationManager::class.java)).setNotificationsEnabled(false)
        ShadowAlarmManager.setCanScheduleExactAlarms(false)
        begin("1.1")
        tap(wide)
        picture("words-ask")
        tap("Not now")
        pass(2)
        picture("words-lost")
        die()
        app.records.writeBytes(File("target/demo.db").readBytes().also { bytes -> for (at in 8_192 until bytes.size) bytes[at] = 90 })
        start()
        picture("words-damaged")
        val icon = app.getDrawable(R.mipmap.ic_launcher)!!
        val drawn = Bitmap.createBitmap(432, 432, Bitmap.Config.ARGB_8888)
        icon.setBounds(0, 0, 432, 432)
        icon.draw(Canvas(drawn))
        save("words-icon", drawn)
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

    /** The longer words on the narrowest phone. */
    @Test
    @Config(qualifiers = "de-rDE-w320dp-h568dp-notnight-xhdpi")
    fun germanSmall() = all("german-small")

    @Test
    @Config(qualifiers = "de-rDE-w411dp-h914dp-night-420dpi")
    fun germanLarge() {
        RuntimeEnvironment.setFontScale(2f)
        all("german-large")
    }

    /** Both at once. */
    @Test
    @Config(qualifiers = "de-rDE-w320dp-h568dp-notnight-xhdpi")
    fun germanSmallLarge() {
        RuntimeEnvironment.setFontScale(2f)
        all("german-small-large")
    }

    @Test
    @Config(qualifiers = "de-rDE-w320dp-h568dp-notnight-xhdpi")
    fun germanForms() = forms("german-form")

    @Test
    @Config(qualifiers = "de-rDE-w411dp-h914dp-night-420dpi")
    fun germanFormsLarge() {
        RuntimeEnvironment.setFontScale(2f)
        forms("german-form-large")
    }

    @Test
    @Config(qualifiers = "w320dp-h568dp-night-xhdpi")
    fun small() = all("small")

    @Test
    @Config(qualifiers = "w914dp-h411dp-land-night-420dpi")
    fun landscape() = all("landscape")

    @Test
    @Config(qualifiers = "w800dp-h1280dp-notnight-hdpi")
    fun tablet() = all("tablet")

    @Test
    @Config(qualifiers = "ar-rXB-ldrtl-w411dp-h914dp-night-420dpi")
    fun rightToLeft() = all("rtl")

    private companion object {
        const val A_FEW = 5
    }
}
