package barwright.android.screen

import android.content.Context
import android.os.Build
import android.widget.LinearLayout
import android.widget.ScrollView
import barwright.android.Files
import barwright.android.R
import barwright.android.view.GAP
import barwright.android.view.Hands
import barwright.android.view.KeyView
import barwright.android.view.MID
import barwright.android.view.Style
import barwright.android.view.put
import barwright.core.Draft
import barwright.core.Look

/** Where to go, and the device's own matters. */
class Places(context: Context, private val hands: Hands, private val doors: Doors) : ScrollView(context) {
    /** What the places open that is no screen of the core. */
    interface Doors {
        fun go(look: Look)

        val files: Files

        fun readAloud()

        fun back()

        var speaks: Boolean
        var overKeyguard: Boolean
    }

    private val style = Style(context)
    private val column = style.column().apply { setPadding(style.dp(16), 0, style.dp(16), style.dp(16)) }

    init {
        addView(column)
        keys(
            R.string.place_today to { doors.go(Look.Today(null, null)) },
            R.string.place_floor to { doors.go(FLOOR) },
            R.string.place_weeks to { doors.go(Look.Weeks) },
            R.string.place_tally to { doors.go(Look.Tally) },
            // No exercise: the one on the floor, or the one done last.
            R.string.place_lift to { doors.go(Look.Lift("", 0u)) },
            R.string.place_balance to { doors.go(Look.Balance(null)) },
            R.string.place_equipment to { doors.go(Look.Equipment) },
            R.string.place_plan to { doors.go(Look.Plan(null, null)) },
        )
        keys(
            R.string.place_care to { doors.go(Look.Care) },
            R.string.read_aloud to { doors.readAloud() },
        )
        heading(R.string.files)
        keys(
            R.string.open_plan to { doors.files.openPlan() },
            R.string.open_gym to { doors.files.openGym() },
            R.string.share_records to { doors.files.shareRecords() },
            R.string.save_records to { doors.files.saveRecords() },
        )
        column.put(key(R.string.check_records) { doors.files.checkRecords() }, above = style.dp(GAP))
        heading(R.string.on_this_phone)
        toggle(R.string.speak, { doors.speaks }) { doors.speaks = it }
        toggle(R.string.over_keyguard, { doors.overKeyguard }) { doors.overKeyguard = it }
        column.put(key(R.string.back) { doors.back() }, above = style.dp(GAP))
    }

    private fun heading(words: Int) {
        val heading = style.text(MID, bold = true).apply { setText(words) }
        if (Build.VERSION.SDK_INT >= 28) heading.isAccessibilityHeading = true
        column.put(heading, above = style.dp(16))
    }

    private fun keys(vararg keys: Pair<Int, () -> Unit>) =
        keys.asList().chunked(2).forEach { (first, second) -> pair(first, second) }

    private fun pair(first: Pair<Int, () -> Unit>, second: Pair<Int, () -> Unit>) {
        val keys = listOf(first, second).map { (label, does) -> key(label, does) }
        // In large type a long word wants the whole width.
        val room = (style.dp(resources.configuration.screenWidthDp - 32) - style.dp(GAP)) / 2
        if (keys.any { it.longestWord() > room }) {
            keys.forEach { column.put(it, above = style.dp(GAP)) }
            return
        }
        val line = style.line()
        keys.forEachIndexed { at, key ->
            val half = LinearLayout.LayoutParams(0, LinearLayout.LayoutParams.MATCH_PARENT, 1f)
            line.addView(key, half.apply { if (at > 0) marginStart = style.dp(GAP) })
        }
        column.put(line, above = style.dp(GAP))
    }

    private fun key(label: Int, does: () -> Unit) =
        KeyView(style, hands).apply { own(context.getString(label), does = does) }

    private fun toggle(label: Int, on: () -> Boolean, set: (Boolean) -> Unit) {
        val key = KeyView(style, hands)
        fun show() {
            key.own(context.getString(label), chosen = on()) {
                set(!on())
                show()
            }
        }
        show()
        column.put(key, above = style.dp(GAP))
    }

    companion object {
        /** The floor with nothing entered. */
        val FLOOR = Look.Floor(Draft(amount = null, load = null, helped = 0u, correct = null, panel = null))
    }
}
