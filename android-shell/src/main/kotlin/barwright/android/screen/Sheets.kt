package barwright.android.screen

import android.content.Context
import android.graphics.Typeface
import android.os.Build
import android.view.Gravity
import android.view.View
import android.widget.HorizontalScrollView
import android.widget.LinearLayout
import android.widget.ScrollView
import barwright.android.R
import barwright.android.view.ChartView
import barwright.android.view.FieldsView
import barwright.android.view.GAP
import barwright.android.view.Hands
import barwright.android.view.KeyFlow
import barwright.android.view.KeyView
import barwright.android.view.Lines
import barwright.android.view.LowScroll
import barwright.android.view.MID
import barwright.android.view.MuscleBarView
import barwright.android.view.RowsView
import barwright.android.view.Slots
import barwright.android.view.Style
import barwright.android.view.Tone
import barwright.android.view.Warnings
import barwright.android.view.put
import barwright.android.view.say
import barwright.android.view.scroll
import barwright.android.view.show
import barwright.android.view.tabular
import barwright.android.view.wide
import barwright.core.Action
import barwright.core.BalanceScreen
import barwright.core.CareScreen
import barwright.core.EquipmentScreen
import barwright.core.FileFault
import barwright.core.FormFile
import barwright.core.Key
import barwright.core.LiftScreen
import barwright.core.MuscleBar
import barwright.core.NotShownScreen
import barwright.core.PlanScreen
import barwright.core.TallyScreen
import barwright.core.TodayScreen
import barwright.core.WeekOfPlan
import barwright.core.WeeksScreen

/**
 * A sheet: one column that scrolls, its keys under it within reach, or beside it on a screen that
 * lies on its side. More keys than a thumb takes in stand at the sheet's end.
 */
abstract class SheetView(
    context: Context,
    protected val hands: Hands,
    files: Pair<Int, () -> Unit>? = null,
    private val handOn: (FormFile) -> Unit = {},
) : LinearLayout(context) {
    protected val style = Style(context)
    protected val sheet = style.column()
    private val subtitle = style.text(colour = style.quiet)
    private val now = KeyView(style, hands)
    private val keys = KeyFlow(style, hands)

    /** A file to open, where this sheet comes from one. */
    private val file = KeyView(style, hands).apply {
        show(false)
        files?.let { (label, open) -> own(context.getString(label), does = open) }
    }

    /** What the sheet shows as a file, to be handed on: at its end, or at its foot where that is what it is for. */
    private val onward = KeyView(style, hands)
    private val onwardNow = KeyView(style, hands)
    private val many = KeyFlow(style, hands, most = 2)
    private val foot = style.column().apply { setPadding(style.dp(16), style.dp(8), style.dp(16), style.dp(12)) }
    private val low = LowScroll(style, if (style.beside) 1f else FOOT_SHARE).apply { addView(foot) }
    protected val scroll: ScrollView
    private var about: Pair<String, String>? = null

    init {
        sheet.put(subtitle)
        val whole = style.column().apply {
            setPadding(style.dp(16), 0, style.dp(16), style.dp(16))
            put(sheet)
            put(many, above = style.dp(GAP))
            put(onward, above = style.dp(GAP))
        }
        scroll = style.scroll(whole)
        foot.put(now)
        foot.put(file, above = style.dp(GAP))
        foot.put(onwardNow, above = style.dp(GAP))
        foot.put(keys, above = style.dp(GAP))
        if (style.beside) {
            orientation = HORIZONTAL
            addView(scroll, LayoutParams(0, LayoutParams.MATCH_PARENT, 1.6f))
            addView(low, LayoutParams(0, LayoutParams.WRAP_CONTENT, 1f).apply { gravity = Gravity.BOTTOM })
        } else {
            orientation = VERTICAL
            addView(scroll, LayoutParams(LayoutParams.MATCH_PARENT, 0, 1f))
            addView(low, wide())
        }
    }

    /** `begins`: the sheet's first key, where it does something, is the one thing to do now. */
    protected fun frame(title: String, subtitle: String, keys: List<Key>, begins: Boolean = false, opens: Boolean = false, onward: FormFile? = null) {
        // Another sheet begins at its top; the same one stays where it was.
        if (title to subtitle != about) scroll.scrollTo(0, 0)
        about = title to subtitle
        this.subtitle.say(subtitle)
        val first = keys.firstOrNull()?.takeIf { begins && it.action is Action.Do && it.enabled }
        now.show(first != null)
        first?.let { now.bind(it, MID, Tone.NOW) }
        val rest = if (first == null) keys else keys.drop(1)
        val few = rest.size <= MOST_AT_FOOT
        this.keys.apply(if (few) rest else emptyList())
        many.apply(if (few) emptyList() else rest)
        file.show(opens)
        val onlyThat = onward != null && first == null && !opens && rest.size <= MOST_BESIDE_FILE
        this.onward.show(onward != null && !onlyThat)
        onwardNow.show(onlyThat)
        onward?.let { file ->
            for (key in listOf(this.onward, onwardNow)) key.own(context.getString(R.string.hand_on)) { handOn(file) }
        }
        low.show(opens || first != null || onlyThat || (few && rest.isNotEmpty()))
    }

    private companion object {
        const val FOOT_SHARE = 0.5f
        const val MOST_AT_FOOT = 6
        const val MOST_BESIDE_FILE = 2
    }
}

/** Today's sheet. */
class TodayView(context: Context, hands: Hands, openPlan: () -> Unit) : SheetView(context, hands, R.string.open_plan to openPlan) {
    private val duration = style.text(bold = true)
    private val cautions = Warnings(style)
    private val needs = FieldsView(style, hands)
    private val rows = RowsView(style, hands)
    private val leftOut = Lines(style, style.quiet)

    init {
        sheet.put(duration)
        sheet.put(cautions, above = style.dp(8))
        sheet.put(needs)
        sheet.put(rows, above = style.dp(8))
        sheet.put(leftOut, above = style.dp(8))
    }

    fun apply(today: TodayScreen) {
        // With nothing on, a plan is the first thing there is to do.
        frame(today.title, today.subtitle, today.keys, begins = true, opens = today.rows.isEmpty())
        duration.say(today.duration)
        cautions.apply(today.cautions)
        needs.apply(today.needs)
        rows.apply(today.rows)
        leftOut.apply(today.leftOut)
    }
}

/** The end of a session. */
class TallyView(context: Context, hands: Hands) : SheetView(context, hands) {
    private val done = RowsView(style, hands)
    private val changes = RowsView(style, hands)
    private val notes = Lines(style)
    private val cautions = Warnings(style)
    private val fields = FieldsView(style, hands)

    init {
        sheet.put(done, above = style.dp(8))
        sheet.put(changes, above = style.dp(8))
        sheet.put(notes, above = style.dp(8))
        sheet.put(cautions, above = style.dp(8))
        sheet.put(fields, above = style.dp(8))
    }

    fun apply(tally: TallyScreen) {
        frame(tally.title, tally.subtitle, tally.keys)
        done.apply(tally.done)
        changes.apply(tally.changes)
        notes.apply(tally.notes)
        cautions.apply(tally.cautions)
        fields.apply(tally.fields)
    }
}

/** The plan as weeks. */
class WeeksView(context: Context, hands: Hands) : SheetView(context, hands) {
    private val weeks = style.column()
    private var at = -1
    private val slots = Slots(weeks, { WeekView(style, hands) }) { view, week: WeekOfPlan -> view.apply(week) }

    init {
        sheet.put(weeks)
    }

    fun apply(screen: WeeksScreen) {
        frame(screen.title, screen.subtitle, screen.keys)
        slots.apply(screen.weeks)
        // It opens where we are; from there on it stays where it was scrolled to.
        val now = screen.weeks.indexOfFirst { it.current }
        if (now != at) {
            at = now
            post { if (now > 0) scroll.scrollTo(0, weeks.top + weeks.getChildAt(now).top) }
        }
    }
}

private class WeekView(style: Style, hands: Hands) : LinearLayout(style.context) {
    private val title = style.text(MID, bold = true)
    private val rows = RowsView(style, hands)

    init {
        orientation = VERTICAL
        layoutParams = wide()
        if (Build.VERSION.SDK_INT >= 28) title.isAccessibilityHeading = true
        put(title, above = style.dp(16))
        put(rows)
    }

    fun apply(week: WeekOfPlan) {
        // Where we are is marked with a sign.
        title.say(if (week.current) "▸ ${week.title}" else week.title)
        rows.apply(week.rows)
    }
}

/** One exercise over time: the drawing first. */
class LiftView(context: Context, hands: Hands) : SheetView(context, hands) {
    private val chart = ChartView(style)
    private val records = RowsView(style, hands)
    private val fields = FieldsView(style, hands)
    private val sessions = RowsView(style, hands)

    init {
        sheet.put(chart, above = style.dp(8))
        sheet.put(records, above = style.dp(8))
        sheet.put(fields, above = style.dp(8))
        sheet.put(sessions, above = style.dp(8))
    }

    fun apply(lift: LiftScreen) {
        frame(lift.title, lift.subtitle, lift.keys)
        chart.apply(lift.chart)
        records.apply(lift.records)
        fields.apply(lift.fields)
        sessions.apply(lift.sessions)
    }
}

/** Each muscle and side, planned and done. */
class BalanceView(context: Context, hands: Hands) : SheetView(context, hands) {
    private val bars = style.column()
    private var full = 1u
    private val slots = Slots(bars, { MuscleView(style) }) { view, bar: MuscleBar -> view.apply(bar, full) }
    private val sentences = RowsView(style, hands)
    private val kindsTitle = style.text(MID, bold = true)
    private val kinds = RowsView(style, hands, plain = true)

    init {
        if (Build.VERSION.SDK_INT >= 28) kindsTitle.isAccessibilityHeading = true
        sheet.put(bars, above = style.dp(8))
        sheet.put(sentences, above = style.dp(8))
        sheet.put(kindsTitle, above = style.dp(16))
        sheet.put(kinds)
    }

    fun apply(balance: BalanceScreen) {
        frame(balance.title, balance.subtitle, balance.keys)
        full = balance.fullHalves
        slots.apply(balance.bars)
        sentences.apply(balance.sentences)
        kindsTitle.say(if (balance.kinds.isEmpty()) "" else resources.getString(R.string.kinds_of_week))
        kinds.apply(balance.kinds)
    }
}

private class MuscleView(style: Style) : LinearLayout(style.context) {
    private val words = style.text()
    private val bar = MuscleBarView(style)
    private val counts = style.text(colour = style.quiet)

    init {
        orientation = VERTICAL
        setPadding(0, style.dp(6), 0, style.dp(6))
        layoutParams = wide()
        put(words)
        put(bar, above = style.dp(2))
        put(counts, above = style.dp(2))
    }

    fun apply(muscle: MuscleBar, full: UInt) {
        words.say(muscle.text)
        words.typeface = Typeface.create("sans-serif", if (muscle.behind) Typeface.BOLD else Typeface.NORMAL)
        bar.apply(muscle, full)
        counts.say(muscle.detail)
    }
}

/** What this gym has. */
class EquipmentView(context: Context, hands: Hands, openGym: () -> Unit, handOn: (FormFile) -> Unit) :
    SheetView(context, hands, R.string.open_gym to openGym, handOn) {
    private val gyms = KeyFlow(style, hands, most = 2)
    private val rows = RowsView(style, hands, plain = true)

    init {
        sheet.put(gyms, above = style.dp(GAP))
        sheet.put(rows, above = style.dp(8))
    }

    fun apply(equipment: EquipmentScreen) {
        frame(equipment.title, equipment.subtitle, equipment.keys, opens = true, onward = equipment.file)
        gyms.apply(equipment.gyms)
        rows.apply(equipment.rows)
    }
}

/** The general cautions, and the switch for minors. */
class CareView(context: Context, hands: Hands) : SheetView(context, hands) {
    private val rows = RowsView(style, hands, plain = true)

    init {
        sheet.put(rows, above = style.dp(8))
    }

    fun apply(care: CareScreen) {
        frame(care.title, care.subtitle, care.keys)
        rows.apply(care.rows)
    }
}

/** What stands where a screen could not be made after a tap that is recorded. */
class NotShownView(context: Context, hands: Hands) : SheetView(context, hands) {
    private val words = Warnings(style)

    init {
        sheet.put(words, above = style.dp(GAP))
    }

    fun apply(not: NotShownScreen) {
        frame(not.title, "", not.keys)
        words.apply(listOf(not.reason, not.report).filter { it.isNotEmpty() })
    }
}

/** A plan, or what is wrong with a file and where. */
class PlanView(context: Context, hands: Hands, openPlan: () -> Unit) : SheetView(context, hands, R.string.open_plan to openPlan) {
    private val faults = style.column()
    private val slots = Slots(faults, { FaultView(style) }) { view, fault: FileFault -> view.apply(fault) }
    private val rows = RowsView(style, hands)

    init {
        sheet.put(faults)
        sheet.put(rows, above = style.dp(8))
    }

    fun apply(plan: PlanScreen) {
        frame(plan.title, plan.subtitle, plan.keys, begins = true, opens = true)
        slots.apply(plan.faults)
        faults.show(plan.faults.isNotEmpty())
        rows.apply(plan.rows)
    }
}

/** A fault in its place: the line as it is written, underlined, and what to write instead. */
private class FaultView(private val style: Style) : LinearLayout(style.context) {
    private val place = style.text(colour = style.quiet)
    private val line = code(style)
    private val under = code(style).apply {
        importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO
    }
    private val problem = style.text(bold = true)
    private val advice = style.text()

    init {
        orientation = VERTICAL
        layoutParams = wide()
        put(place, above = style.dp(16))
        val written = style.column().apply {
            layoutDirection = View.LAYOUT_DIRECTION_LTR
            put(line)
            put(under)
        }
        // A file's lines are not broken: the underline must stay under its place.
        put(HorizontalScrollView(style.context).apply { addView(written) })
        put(problem, above = style.dp(2))
        put(advice)
    }

    fun apply(fault: FileFault) {
        val where = if (fault.advises) R.string.advice_place else R.string.fault_place
        val kind = listOf(fault.label, fault.check).filter { it.isNotEmpty() }.joinToString(" · ")
        place.say(resources.getString(where, "${fault.line}", "${fault.column}", kind))
        line.say(fault.text)
        under.say(fault.underline)
        // What only advises is said more quietly than what is wrong.
        under.setTextColor(if (fault.advises) style.quiet else style.warn)
        problem.tabular(bold = !fault.advises)
        problem.say(fault.problem)
        advice.say(fault.advice)
    }

    private fun code(style: Style) = style.text().apply {
        typeface = Typeface.MONOSPACE
        setHorizontallyScrolling(true)
        textDirection = View.TEXT_DIRECTION_LTR
        textAlignment = View.TEXT_ALIGNMENT_TEXT_START
    }
}
