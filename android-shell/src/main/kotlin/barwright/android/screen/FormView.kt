package barwright.android.screen

import android.content.Context
import android.graphics.Canvas
import android.graphics.Paint
import android.os.Build
import android.view.Gravity
import android.widget.LinearLayout
import barwright.android.R
import barwright.android.view.Beside
import barwright.android.view.ChartView
import barwright.android.view.FieldView
import barwright.android.view.Hands
import barwright.android.view.KeyFlow
import barwright.android.view.KeyView
import barwright.android.view.Lines
import barwright.android.view.SMALL_TARGET
import barwright.android.view.TARGET
import barwright.android.view.Slots
import barwright.android.view.Style
import barwright.android.view.Warnings
import barwright.android.view.put
import barwright.android.view.say
import barwright.android.view.show
import barwright.android.view.tabular
import barwright.android.view.wide
import barwright.core.FormFile
import barwright.core.FormRow
import barwright.core.FormScreen

/** What is made and mended by hand: one view for all of it. */
class FormView(context: Context, hands: Hands, openPlan: () -> Unit, handOn: (FormFile) -> Unit) :
    SheetView(context, hands, R.string.open_plan to openPlan, handOn) {
    private val rows = style.column()
    private val slots = Slots(rows, { FormRowView(style, hands) }) { view, row: FormRow -> view.apply(row) }
    private val notes = Lines(style)
    private val chart = ChartView(style)

    init {
        sheet.put(rows, above = style.dp(8))
        sheet.put(notes, above = style.dp(8))
        sheet.put(chart, above = style.dp(8))
    }

    fun apply(form: FormScreen) {
        frame(form.title, form.subtitle, form.keys, opens = form.planFile, onward = form.file)
        slots.apply(form.rows)
        notes.apply(form.notes)
        chart.apply(form.chart)
    }
}

/**
 * A line of a form: what it is, what it says between its steps, what is wrong with it, and its keys. As
 * on the floor, a tap on what stands between the steps types it.
 */
private class FormRowView(private val style: Style, private val hands: Hands) : LinearLayout(style.context) {
    private val text = style.text()
    private val detail = style.text(colour = style.quiet)
    private val said = style.text(bold = true)
    private val value = style.text(bold = true).apply {
        gravity = Gravity.CENTER
        textAlignment = TEXT_ALIGNMENT_CENTER
        minWidth = style.dp(TARGET)
    }
    private val down = KeyView(style, hands)
    private val up = KeyView(style, hands)
    private val type = KeyView(style, hands).apply { minimumWidth = style.dp(FIGURE) }
    private val faults = Warnings(style)
    private val remarks = Lines(style, style.quiet)
    private val field = FieldView(style, hands)
    private val keys = KeyFlow(style, hands, high = SMALL_TARGET)
    private val mark = Paint()
    private var id = ""
    private var typing = false
    private var heading = false

    init {
        orientation = VERTICAL
        layoutParams = wide()
        setWillNotDraw(false)
        val words = style.column().apply {
            put(text)
            put(said)
            put(detail)
        }
        put(Beside(style, words, down, value, type, up))
        put(faults, above = style.dp(4))
        put(remarks)
        put(field)
        put(keys, above = style.dp(6))
    }

    fun apply(row: FormRow) {
        if (row.id != id) typing = false
        id = row.id
        heading = row.depth.toInt() == 0
        val indent = if (row.depth.toInt() > 1) style.dp(16) else 0
        setPaddingRelative(indent, style.dp(if (heading) 16 else 5), 0, style.dp(if (heading) 2 else 5))
        text.say(row.text)
        text.tabular(bold = heading)
        if (Build.VERSION.SDK_INT >= 28) text.isAccessibilityHeading = heading
        detail.say(row.detail)
        val stepped = row.down != null || row.up != null
        // Between steps there is room for a figure, not for a sentence.
        said.say(if (stepped) "" else row.value)
        value.say(if (stepped && row.field == null) row.value else "")
        down.show(row.down != null)
        row.down?.let { down.bind(it) }
        up.show(row.up != null)
        row.up?.let { up.bind(it) }
        faults.apply(row.faults)
        remarks.apply(row.remarks)
        keys.apply(row.keys)
        row.field?.let { field.apply(it) }
        showField(row)
        invalidate()
    }

    /** What can be typed is typed when it is asked for. */
    private fun showField(row: FormRow) {
        field.show(row.field != null && typing)
        type.show(row.field != null)
        if (row.field == null) return
        val figure = row.value.takeIf { it.isNotEmpty() && (row.down != null || row.up != null) }
        type.own(if (typing) context.getString(R.string.close_typing) else figure ?: context.getString(R.string.type)) {
            typing = !typing
            showField(row)
        }
        type.contentDescription = context.getString(R.string.type_of, row.text)
    }

    override fun onDraw(canvas: Canvas) {
        super.onDraw(canvas)
        if (heading) {
            mark.color = style.outline
            canvas.drawRect(0f, style.dp(10f), width.toFloat(), style.dp(11f), mark)
        }
    }

    private companion object {
        /** So wide that the steps of lines under each other stand under each other. */
        const val FIGURE = 88
    }
}
