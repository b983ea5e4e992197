package barwright.android.view

import android.graphics.Canvas
import android.graphics.Paint
import android.view.Gravity
import android.view.View
import android.widget.LinearLayout
import barwright.android.R
import barwright.core.Row

/** A line of a sheet: its text, a quieter one, why, and what can be done with it. */
class RowView(private val style: Style, hands: Hands, private val plain: Boolean) : LinearLayout(style.context) {
    private val text = style.text()
    private val detail = style.text(colour = style.quiet)
    private val why = WhyView(style)
    private val only = KeyView(style, hands, SMALL_TARGET)
    private val more = KeyView(style, hands, SMALL_TARGET)
    private val keys = KeyFlow(style, hands, high = SMALL_TARGET)
    private var id = ""
    private var open = false
    private val mark = Paint()
    private var warns = false
    private var heading = false

    init {
        orientation = VERTICAL
        setWillNotDraw(false)
        val words = style.column().apply {
            put(text)
            put(detail)
        }
        put(Beside(style, words, why.ask, only, more))
        put(why)
        put(keys, above = style.dp(6))
        layoutParams = wide()
    }

    /** One key stands beside its words; of more the first, and the others when they are asked for. */
    private fun show(row: Row) {
        if (row.id != id) open = false
        id = row.id
        val many = row.keys.size > 1
        val first = row.keys.firstOrNull().takeIf { row.keys.size == 1 || (many && !style.largeText) }
        only.show(first != null)
        first?.let { only.bind(it) }
        more.show(many)
        if (many) {
            more.own(context.getString(if (open) R.string.close_keys else R.string.more_keys)) {
                open = !open
                show(row)
            }
            more.contentDescription = context.getString(if (open) R.string.close_keys_of else R.string.more_keys_of, row.text)
        }
        val others = if (first == null) row.keys else row.keys.drop(1)
        keys.apply(if (many && !open) emptyList() else others)
    }

    fun apply(row: Row) {
        val indent = if (row.depth.toInt() > 1) style.dp(16) else 0
        heading = row.depth.toInt() == 0
        setPaddingRelative(indent + if (row.warns) style.dp(10) else 0, style.dp(if (heading) 16 else 5), 0, style.dp(if (heading) 2 else 5))
        // What is done or warns is marked with a sign, not by its colour alone.
        text.say(if (row.done) "✓ ${row.text}" else row.text)
        text.tabular(bold = heading || (!plain && row.depth.toInt() < 2))
        if (android.os.Build.VERSION.SDK_INT >= 28) text.isAccessibilityHeading = heading
        detail.say(row.detail)
        why.apply(row.why, R.string.why)
        show(row)
        if (warns != row.warns) invalidate()
        warns = row.warns
    }

    override fun onDraw(canvas: Canvas) {
        super.onDraw(canvas)
        val rtl = layoutDirection == LAYOUT_DIRECTION_RTL
        if (warns) {
            mark.color = style.warn
            val from = if (rtl) width - paddingStart.toFloat() + style.dp(4f) else paddingStart - style.dp(8f)
            canvas.drawRect(from, style.dp(5f), from + style.dp(4f), height - style.dp(5f), mark)
        }
        if (heading) {
            mark.color = style.outline
            canvas.drawRect(0f, style.dp(10f), width.toFloat(), style.dp(11f), mark)
        }
    }
}

/** Rows under each other; in a plain list only the headings stand out. */
class RowsView(style: Style, hands: Hands, plain: Boolean = false) : LinearLayout(style.context) {
    private val slots = Slots(this, { RowView(style, hands, plain) }) { view, row: Row -> view.apply(row) }

    init {
        orientation = VERTICAL
    }

    fun apply(rows: List<Row>) {
        slots.apply(rows)
        show(rows.isNotEmpty())
    }
}

/** The derivation behind a number, when it is asked for; the question stands where there is room. */
class WhyView(private val style: Style) : LinearLayout(style.context) {
    val ask = style.text(bold = true).apply {
        minHeight = style.dp(SMALL_TARGET)
        minWidth = style.dp(SMALL_TARGET)
        gravity = Gravity.CENTER_VERTICAL
        paintFlags = paintFlags or Paint.UNDERLINE_TEXT_FLAG
        isClickable = true
        isFocusable = true
    }
    private val lines = Lines(style, style.quiet)
    private var open = false
    private var reasons: List<String> = emptyList()

    init {
        orientation = VERTICAL
        put(lines)
        ask.setOnClickListener {
            open = !open
            show(open)
        }
    }

    fun apply(reasons: List<String>, label: Int) {
        // Another number's reason stays closed until it is asked for.
        if (reasons != this.reasons) open = false
        this.reasons = reasons
        // Said only where it is shown: words that come and go are read out as a change.
        ask.say(if (reasons.isEmpty()) "" else style.context.getString(label))
        ask.show(reasons.isNotEmpty())
        lines.apply(reasons)
        show(open && reasons.isNotEmpty())
    }
}

/** Plain lines of text under each other. */
class Lines(style: Style, colour: Int = style.ink, bold: Boolean = false) : LinearLayout(style.context) {
    private val slots = Slots(this, { style.text(colour = colour, bold = bold).apply { layoutParams = wide() } }) { view, line: String ->
        view.say(line)
    }

    init {
        orientation = VERTICAL
    }

    fun apply(lines: List<String>) {
        slots.apply(lines)
        show(lines.isNotEmpty())
    }
}

/** Lines that warn: a clay stripe beside them, in ordinary type. */
class Warnings(private val style: Style) : LinearLayout(style.context) {
    private val lines = Lines(style, bold = true)
    private val mark = Paint().apply { color = this@Warnings.style.warn }

    init {
        orientation = VERTICAL
        setWillNotDraw(false)
        setPaddingRelative(style.dp(12), style.dp(4), 0, style.dp(4))
        put(lines)
    }

    fun apply(words: List<String>) {
        lines.apply(words)
        show(words.isNotEmpty())
    }

    override fun onDraw(canvas: Canvas) {
        super.onDraw(canvas)
        val rtl = layoutDirection == View.LAYOUT_DIRECTION_RTL
        val from = if (rtl) width - style.dp(4f) else 0f
        canvas.drawRect(from, style.dp(4f), from + style.dp(4f), height - style.dp(4f), mark)
    }
}
