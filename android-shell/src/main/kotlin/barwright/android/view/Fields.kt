package barwright.android.view

import android.text.InputType
import android.util.TypedValue
import android.view.Gravity
import android.view.inputmethod.EditorInfo
import android.widget.Button
import android.widget.EditText
import android.widget.LinearLayout
import barwright.android.R
import barwright.core.Field

/** Something to write, and the key that hands it over. */
class FieldView(private val style: Style, private val hands: Hands) : LinearLayout(style.context) {
    private val label = style.text(bold = true)
    private val entry = EditText(style.context).apply {
        setTextSize(TypedValue.COMPLEX_UNIT_SP, SMALL)
        setTextColor(style.ink)
        setHintTextColor(style.quiet)
        // Not minHeight: one line of input would set that aside.
        minimumHeight = style.dp(TARGET)
        gravity = Gravity.CENTER_VERTICAL or Gravity.START
        tabular()
        setPadding(style.dp(12), style.dp(6), style.dp(12), style.dp(6))
        background = style.frame()
        imeOptions = EditorInfo.IME_ACTION_DONE
    }
    private val keep = Button(style.context, null, 0, android.R.style.Widget_Material_Button_Borderless).apply {
        setText(R.string.write)
        isAllCaps = false
        setTextColor(style.ink)
        setTextSize(TypedValue.COMPLEX_UNIT_SP, SMALL)
        tabular(bold = true)
        gravity = Gravity.CENTER
        textAlignment = TEXT_ALIGNMENT_CENTER
        minimumHeight = style.dp(TARGET)
        minimumWidth = style.dp(TARGET)
        setPadding(style.dp(12), style.dp(6), style.dp(12), style.dp(6))
        background = style.frame()
    }
    private var field: Field? = null

    init {
        orientation = VERTICAL
        put(label, above = style.dp(8))
        val line = style.line()
        line.addView(entry, LayoutParams(0, LayoutParams.WRAP_CONTENT, 1f))
        line.addView(keep, LayoutParams(LayoutParams.WRAP_CONTENT, LayoutParams.MATCH_PARENT).apply { marginStart = style.dp(GAP) })
        put(line, above = style.dp(4))
        layoutParams = wide()
        keep.setOnClickListener { send() }
        entry.setOnEditorActionListener { _, action, _ ->
            if (action == EditorInfo.IME_ACTION_DONE) send()
            action == EditorInfo.IME_ACTION_DONE
        }
    }

    fun apply(field: Field) {
        val before = this.field
        this.field = field
        label.say(field.label)
        entry.hint = field.hint
        entry.contentDescription = field.label
        keep.contentDescription = "${style.context.getString(R.string.write)}: ${field.label}"
        // A figure may carry its unit or a comma, so letters stay within reach.
        val kind = if (field.numeric) InputType.TYPE_CLASS_TEXT or InputType.TYPE_TEXT_FLAG_NO_SUGGESTIONS
        else InputType.TYPE_CLASS_TEXT or InputType.TYPE_TEXT_FLAG_CAP_SENTENCES
        if (entry.inputType != kind) entry.inputType = kind
        // What is being written stays; what stands changed only with the field.
        if (before?.id != field.id || before.value != field.value) entry.setText(field.value)
    }

    private fun send() {
        field?.let { hands.write(it.id, entry.text.toString()) }
    }
}

/** Fields under each other. */
class FieldsView(style: Style, hands: Hands) : LinearLayout(style.context) {
    private val slots = Slots(this, { FieldView(style, hands) }) { view, field: Field -> view.apply(field) }

    init {
        orientation = VERTICAL
    }

    fun apply(fields: List<Field>) {
        slots.apply(fields)
        show(fields.isNotEmpty())
    }
}
