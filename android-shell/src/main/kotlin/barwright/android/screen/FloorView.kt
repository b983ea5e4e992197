package barwright.android.screen

import android.content.Context
import android.view.Gravity
import android.view.View
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.LinearLayout
import android.widget.LinearLayout.LayoutParams
import android.widget.ScrollView
import barwright.android.R
import barwright.android.view.BIG
import barwright.android.view.BarView
import barwright.android.view.BigText
import barwright.android.view.FieldsView
import barwright.android.view.GAP
import barwright.android.view.Hands
import barwright.android.view.KeyFlow
import barwright.android.view.KeyView
import barwright.android.view.Lines
import barwright.android.view.LowScroll
import barwright.android.view.MID
import barwright.android.view.RowsView
import barwright.android.view.SECOND_TARGET
import barwright.android.view.SMALL_TARGET
import barwright.android.view.Style
import barwright.android.view.TARGET
import barwright.android.view.Tone
import barwright.android.view.Warnings
import barwright.android.view.WhyView
import barwright.android.view.put
import barwright.android.view.say
import barwright.android.view.scroll
import barwright.android.view.show
import barwright.core.BarZone
import barwright.core.CallZone
import barwright.core.Figure
import barwright.core.FloorScreen
import barwright.core.Key
import barwright.core.Panel
import barwright.core.RunningRest
import barwright.core.ThumbZone

/**
 * The floor: the bar, the call, the thumb. The thumb zone stays at the bottom, the two others above
 * it; on its side the screen puts them beside each other. A new screen changes views in place.
 */
class FloorView(context: Context, hands: Hands) : LinearLayout(context) {
    private val style = Style(context)
    private val notices = Warnings(style).apply { accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE }
    private val rest = RestZone(style, hands)
    private val bar = BarZoneView(style, hands)
    private val call = CallZoneView(style)
    private val thumb = ThumbZoneView(style, hands)
    private val panel = PanelView(style, hands)
    private val upper: ScrollView
    private val lower: ScrollView
    private var part: String? = null
    private var rests = false
    private var open: String? = null

    init {
        val beside = style.beside
        orientation = if (beside) HORIZONTAL else VERTICAL
        val above = style.column().apply {
            setPadding(style.dp(16), 0, style.dp(16), style.dp(8))
            if (style.tight) {
                put(rest)
                put(bar)
                put(notices, above = style.dp(4))
                put(call, above = style.dp(4))
            } else {
                put(notices)
                put(rest)
                put(bar)
                put(call, above = style.dp(8))
            }
        }
        upper = style.scroll(above)
        val hand = style.column().apply {
            setPadding(style.dp(16), style.dp(8), style.dp(16), style.dp(12))
            put(thumb)
            put(panel)
        }
        lower = LowScroll(style, if (beside) 1f else if (style.tight) LOW_HAND_SHARE else HAND_SHARE).apply { addView(hand) }
        if (beside) {
            addView(upper, LayoutParams(0, LayoutParams.MATCH_PARENT, 1f))
            addView(lower, LayoutParams(0, LayoutParams.WRAP_CONTENT, 1f).apply { gravity = Gravity.BOTTOM })
        } else {
            addView(upper, LayoutParams(LayoutParams.MATCH_PARENT, 0, 1f))
            addView(lower, LayoutParams(LayoutParams.MATCH_PARENT, LayoutParams.WRAP_CONTENT))
        }
    }

    fun apply(floor: FloorScreen) {
        val resting = floor.rest != null
        notices.apply(floor.notices)
        rest.apply(floor.rest, floor.call)
        bar.apply(floor.bar, resting)
        call.apply(floor.call, resting)
        // Another set or panel begins at its top.
        if (floor.part != part || resting != rests || floor.panel?.id != open) upper.scrollTo(0, 0)
        if (floor.panel?.id != open) lower.scrollTo(0, 0)
        part = floor.part
        rests = resting
        open = floor.panel?.id
        thumb.show(floor.panel == null)
        thumb.apply(floor.thumb)
        panel.apply(floor.panel)
    }

    private companion object {
        const val HAND_SHARE = 0.68f

        /** Where room is short the thumb leaves the bar its place. */
        const val LOW_HAND_SHARE = 0.66f
    }
}

/** The countdown takes the large type; shorter and longer stand together after it. */
private class RestZone(private val style: Style, hands: Hands) : LinearLayout(style.context) {
    private val label = style.text(colour = style.quiet, bold = true)
    private val figures = BigText(style).apply {
        quiet = true
        gravity = Gravity.CENTER
        textAlignment = View.TEXT_ALIGNMENT_CENTER
    }
    private val shorter = KeyView(style, hands, if (style.tight) SMALL_TARGET else TARGET)
    private val longer = KeyView(style, hands, if (style.tight) SMALL_TARGET else TARGET)
    private val exercise = style.text(bold = true)
    private val next = style.text(MID, bold = true)
    private var over: Boolean? = null

    init {
        orientation = VERTICAL
        put(label)
        val line = style.line().apply { gravity = Gravity.CENTER_VERTICAL }
        if (style.tight) figures.most = LOW_FIGURES
        line.addView(figures, LayoutParams(0, LayoutParams.WRAP_CONTENT, 1f))
        for (key in listOf(shorter, longer)) {
            key.minimumWidth = style.dp(if (style.tight) TARGET else KEY)
            val beside = LayoutParams(LayoutParams.WRAP_CONTENT, LayoutParams.WRAP_CONTENT)
            line.addView(key, beside.apply { marginStart = style.dp(GAP) })
        }
        put(line)
        if (!style.tight) {
            put(exercise, above = style.dp(2))
            put(next)
        }
    }

    /** The next call stands under the countdown; where room is short the call's own zone says it. */
    fun apply(rest: RunningRest?, call: CallZone) {
        show(rest != null)
        if (rest == null) {
            over = null
            return
        }
        // A low screen has no line to spare for a word of its own.
        label.say(if (style.tight) "" else rest.label)
        exercise.say(call.exercise)
        next.say(call.sentence)
        figures.say(rest.text)
        val spoken = "${rest.label} ${rest.text}"
        if (figures.contentDescription?.toString() != spoken) figures.contentDescription = spoken
        shorter.bind(rest.shorter)
        longer.bind(rest.longer)
        // Said once, when it ends; never while it counts.
        if (rest.over && over == false) announceForAccessibility(spoken)
        over = rest.over
    }

    private companion object {
        const val KEY = 76

        /** The countdown where room is short, in sp: still the largest figures of the screen. */
        const val LOW_FIGURES = 48f
    }
}

/** Zone one. */
private class BarZoneView(private val style: Style, hands: Hands) : LinearLayout(style.context) {
    private val large = BigText(style)
    private val plain = style.text(MID, bold = true)
    private val line = style.text(MID)
    private val change = style.text(MID)
    private val drawing = BarView(style)
    // Where height is short the total of a rest's next load stands beside its drawing, not over it.
    private val besideTotal = style.text(MID, bold = true)
    private val short = style.low && !style.beside && !style.largeText
    private val counts = style.text(colour = style.quiet, bold = true)
    private val bar = style.text(colour = style.quiet)
    private val holds = KeyView(style, hands)
    private val middle = style.line()

    init {
        orientation = VERTICAL
        put(large)
        put(plain)
        put(line)
        put(change, above = style.dp(2))
        val words = style.column().apply {
            put(besideTotal)
            put(counts)
            put(bar)
        }
        if (style.largeText) {
            // Under the drawing, where there is room for the words.
            middle.orientation = VERTICAL
            middle.put(drawing)
            val under = style.line().apply { gravity = Gravity.CENTER_VERTICAL }
            under.addView(words, LayoutParams(0, LayoutParams.WRAP_CONTENT, 1f))
            under.addView(holds, LayoutParams(0, LayoutParams.WRAP_CONTENT, 1f).apply { marginStart = style.dp(GAP) })
            middle.put(under, above = style.dp(4))
        } else {
            // Words that are higher than the drawing don't push it down.
            middle.gravity = if (short) Gravity.TOP else Gravity.CENTER_VERTICAL
            words.put(holds, above = style.dp(4))
            middle.addView(drawing, LayoutParams(0, LayoutParams.WRAP_CONTENT, 1f).apply { marginEnd = style.dp(GAP) })
            middle.addView(words, LayoutParams(style.dp(BESIDE), LayoutParams.WRAP_CONTENT))
        }
        put(middle, above = style.dp(if (style.tight) 2 else 6))
    }

    fun apply(zone: BarZone, resting: Boolean) {
        // The largest type is the load's, unless a rest counts in it.
        large.say(if (resting) "" else zone.total)
        val beside = resting && short && zone.drawn
        plain.say(if (resting && !beside) zone.total else "")
        besideTotal.say(if (beside) zone.total else "")
        line.say(zone.line)
        drawing.apply(zone)
        counts.say(zone.counts)
        change.say(zone.change)
        // The line names it where nothing is drawn.
        bar.say(if (zone.line.isEmpty()) zone.bar else "")
        middle.show(zone.drawn || (zone.line.isEmpty() && zone.bar.isNotEmpty()) || zone.counts.isNotEmpty() || zone.holds != null)
        holds.show(zone.holds != null)
        zone.holds?.let { holds.bind(it) }
    }

    private companion object {
        const val BESIDE = 136
    }
}

/** Zone two. */
private class CallZoneView(private val style: Style) : LinearLayout(style.context) {
    private val cautions = Warnings(style)
    private val exercise = style.text(bold = true)
    private val sentence = style.text(MID, bold = true)
    private val last = style.text(colour = style.quiet)
    private val manner = Lines(style)
    private val setUp = Lines(style)
    private val cues = Lines(style)
    private val why = WhyView(style)
    private val toGo = style.text(colour = style.quiet)

    init {
        orientation = VERTICAL
        put(exercise)
        put(sentence)
        put(last, above = style.dp(2))
        put(cautions, above = style.dp(4))
        put(manner, above = style.dp(4))
        put(setUp, above = style.dp(4))
        put(cues, above = style.dp(4))
        put(toGo, above = style.dp(4))
        put(why.ask, params = LayoutParams(LayoutParams.WRAP_CONTENT, LayoutParams.WRAP_CONTENT))
        put(why)
    }

    fun apply(zone: CallZone, resting: Boolean) {
        // While resting it stands under the countdown already, where there is room.
        val said = resting && !style.tight
        exercise.say(if (said) "" else zone.exercise)
        sentence.say(if (said) "" else zone.sentence)
        last.say(zone.last)
        cautions.apply(zone.cautions)
        manner.apply(zone.manner)
        setUp.apply(zone.setUp)
        cues.apply(zone.cues)
        why.apply(zone.why, R.string.why_this_load)
        toGo.say(zone.toGo)
    }
}

/** Zone three: everything that records. */
private class ThumbZoneView(private val style: Style, hands: Hands) : LinearLayout(style.context) {
    private val figure = FigureView(style, hands)
    private val prompt = style.text(bold = true)
    private val effort = KeyFlow(style, hands, most = 3, grid = true)
    private val main = KeyView(style, hands)
    private val second = KeyFlow(style, hands, most = 2, high = SECOND_TARGET)
    // A low screen has no more height for them than for those of the second rank.
    private val small = KeyFlow(style, hands, high = if (style.low && !style.beside) SECOND_TARGET else TARGET)

    init {
        orientation = VERTICAL
        put(figure)
        put(prompt, above = style.dp(8))
        put(effort, above = style.dp(6))
        put(main, above = style.dp(GAP))
        put(second, above = style.dp(GAP))
        put(small, above = style.dp(GAP))
    }

    fun apply(zone: ThumbZone) {
        figure.apply(zone.figure)
        prompt.say(zone.prompt)
        val halves = zone.effort.associate { it.key.id to it.half }
        effort.apply(zone.effort.map { it.key }, MID, half = { halves[it.id] }) { Tone.NOW }
        main.show(zone.main != null)
        // Beside effort keys a main key is the second choice: putting a set right as it was.
        zone.main?.let { main.bind(it, MID, if (zone.effort.isEmpty()) Tone.NOW else Tone.PLAIN) }
        // Less than half as high as what records a set as it was called.
        val (uncalled, beside) = zone.beside.partition { it.id == UNCALLED }
        second.apply(uncalled + listOfNotNull(zone.ended))
        small.apply(beside + listOfNotNull(zone.undo, zone.redo, zone.more))
    }
}

/** The key of a set without its effort. */
private const val UNCALLED = "uncalled"

/** The panel of digits. */
private const val PAD = "pad"

/** What was done, a step down and up beside it. */
private class FigureView(private val style: Style, private val hands: Hands) : LinearLayout(style.context) {
    private val down = KeyView(style, hands)
    private val text = BigText(style).apply {
        gravity = Gravity.CENTER
        textAlignment = View.TEXT_ALIGNMENT_CENTER
        accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
    }
    private val up = KeyView(style, hands)
    private val frame = style.frame()
    private var pad: Key? = null

    init {
        orientation = HORIZONTAL
        gravity = Gravity.CENTER_VERTICAL
        text.minHeight = style.dp(TARGET)
        text.setOnClickListener { pad?.let { hands.tap(it.action) } }
        text.accessibilityDelegate = object : View.AccessibilityDelegate() {
            override fun onInitializeAccessibilityNodeInfo(host: View, info: AccessibilityNodeInfo) {
                super.onInitializeAccessibilityNodeInfo(host, info)
                pad?.let { info.addAction(AccessibilityNodeInfo.AccessibilityAction(AccessibilityNodeInfo.ACTION_CLICK, it.says)) }
            }
        }
        addView(down, LayoutParams(0, LayoutParams.WRAP_CONTENT, 1f))
        addView(text, LayoutParams(0, LayoutParams.WRAP_CONTENT, 1.4f).apply { setMarginsRelative(style.dp(GAP), 0, style.dp(GAP), 0) })
        addView(up, LayoutParams(0, LayoutParams.WRAP_CONTENT, 1f))
    }

    fun apply(figure: Figure?) {
        show(figure != null)
        if (figure == null) return
        // A figure that runs by itself is read when it is looked at; one that was stepped is said.
        val live = if (figure.runs) View.ACCESSIBILITY_LIVE_REGION_NONE else View.ACCESSIBILITY_LIVE_REGION_POLITE
        if (text.accessibilityLiveRegion != live) text.accessibilityLiveRegion = live
        // While a hold runs it is read from the floor.
        text.most = if (figure.runs) BIG else MID
        down.bind(figure.down, MID)
        text.say("${figure.text} ${figure.unit}")
        up.bind(figure.up, MID)
        // What is far from the call is typed: a tap on the figure.
        pad = figure.pad.takeIf { it.enabled }
        text.isClickable = pad != null
        text.background = if (pad != null) frame else null
    }
}

/** What is seldom needed, open over the thumb zone. */
private class PanelView(private val style: Style, hands: Hands) : LinearLayout(style.context) {
    private val title = style.text(MID, bold = true)
    private val rows = RowsView(style, hands)
    private val keys = KeyFlow(style, hands, most = 2)
    // Digits lie as on any pad; a low screen has no more height for them than for what records nothing.
    private val pad = KeyFlow(style, hands, most = 3, grid = true, high = if (style.low) SMALL_TARGET else TARGET)
    private val fields = FieldsView(style, hands)
    private val close = KeyView(style, hands)

    init {
        orientation = VERTICAL
        if (android.os.Build.VERSION.SDK_INT >= 28) title.isAccessibilityHeading = true
        put(title)
        put(rows, above = style.dp(4))
        put(keys, above = style.dp(GAP))
        put(pad, above = style.dp(GAP))
        put(fields, above = style.dp(4))
        put(close, above = style.dp(GAP))
    }

    fun apply(panel: Panel?) {
        show(panel != null)
        if (panel == null) return
        title.say(panel.title)
        rows.apply(panel.rows)
        val (digits, others) = if (panel.id == PAD) panel.keys to emptyList() else emptyList<Key>() to panel.keys
        pad.apply(digits, MID)
        keys.apply(others)
        fields.apply(panel.fields)
        close.bind(panel.close)
    }
}
