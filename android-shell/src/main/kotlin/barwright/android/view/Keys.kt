package barwright.android.view

import android.content.res.ColorStateList
import android.graphics.Canvas
import android.graphics.Paint
import android.graphics.drawable.GradientDrawable
import android.graphics.drawable.RippleDrawable
import android.text.StaticLayout
import android.text.TextPaint
import android.util.TypedValue
import android.view.Gravity
import android.view.View
import android.view.ViewGroup
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.Button
import barwright.core.Action
import barwright.core.Key

/** What the screens hand taps and texts to. */
interface Hands {
    fun tap(action: Action)

    fun write(field: String, text: String)
}

/** How a key stands out. */
enum class Tone {
    /** The one thing to do now. */
    NOW,

    /** Everything else. */
    PLAIN,
}

/** A key: what stands on it, what it says aloud, what it does. A second one may lie behind a long press. */
class KeyView(private val style: Style, private val hands: Hands, private val high: Int = TARGET) :
    Button(style.context, null, 0, android.R.style.Widget_Material_Button_Borderless) {
    private var does: () -> Unit = {}
    private var held: Key? = null
    private var tone = Tone.PLAIN
    private var chosen = false
    private var painted = false
    /** The largest type of a key of the second rank, in pixels. */
    private var most = style.sp(SMALL)
    private val corner = Paint(Paint.ANTI_ALIAS_FLAG).apply { textSize = this@KeyView.style.sp(SMALL) }

    init {
        isAllCaps = false
        gravity = Gravity.CENTER
        minHeight = style.dp(high)
        minimumHeight = style.dp(high)
        minWidth = 0
        minimumWidth = style.dp(TARGET)
        stateListAnimator = null
        elevation = 0f
        letterSpacing = 0f
        val edge = style.dp(if (high < SMALL_TARGET) 3 else 6)
        setPadding(style.dp(8), edge, style.dp(8), edge)
        tabular(bold = true)
        textAlignment = View.TEXT_ALIGNMENT_CENTER
        paint(Tone.PLAIN, false)
        setOnClickListener { does() }
    }

    /** A key of the shell's own: a place to go to, a matter of the device. */
    fun own(label: String, chosen: Boolean = false, tone: Tone = Tone.PLAIN, does: () -> Unit) {
        tag = null
        this.does = does
        say(if (chosen) "✓ $label" else label)
        contentDescription = label
        isSelected = chosen
        setTextSize(TypedValue.COMPLEX_UNIT_SP, SMALL)
        paint(tone, chosen)
    }

    fun bind(key: Key, size: Float = SMALL, tone: Tone = Tone.PLAIN, held: Key? = null) {
        val other = (held == null) != (this.held == null)
        // The core's own name of it, the same in every language.
        tag = key.id
        does = { hands.tap(key.action) }
        this.held = held
        // What is chosen is marked with a sign, not by its colour alone.
        val label = if (key.chosen) "✓ ${key.label}" else key.label
        if (text.toString() != label) text = label
        if (contentDescription?.toString() != key.says) contentDescription = key.says
        isEnabled = key.enabled
        isSelected = key.chosen
        // What is of the second rank gives way: its words stay on one line however large the text is.
        if (high == SECOND_TARGET) most = minOf(style.sp(size), style.dp(SECOND_TYPE))
        else setTextSize(TypedValue.COMPLEX_UNIT_SP, size)
        paint(tone, key.chosen)
        if (held == null) {
            if (isLongClickable) setOnLongClickListener(null)
            isLongClickable = false
        } else if (other) {
            setOnLongClickListener {
                this.held?.let { hands.tap(it.action) }
                true
            }
        }
        invalidate()
    }

    /** Its type before it gives way to its room. */
    private fun full() = if (high == SECOND_TARGET) TextPaint(paint).apply { textSize = most } else paint

    /** What its longest word takes, with the key's own edges. */
    fun longestWord(): Float =
        text.split(' ').maxOf(full()::measureText) + paddingLeft + paddingRight

    /** How many lines its words take in a key so wide. */
    fun linesIn(width: Int): Int {
        val room = (width - paddingLeft - paddingRight).coerceAtLeast(1)
        return StaticLayout.Builder.obtain(text, 0, text.length, full(), room).build().lineCount
    }

    override fun onMeasure(widthMeasureSpec: Int, heightMeasureSpec: Int) {
        // What lies behind a long press stands in the corner and has its room there; the key's own
        // words stay in the middle where they can.
        val edge = style.dp(8)
        val end = held?.let { (corner.measureText(it.label) + style.dp(12)).toInt() } ?: edge
        val words = paint.measureText(text.toString())
        val start = if (words + 2 * end <= MeasureSpec.getSize(widthMeasureSpec)) end else edge
        if (paddingStart != start || paddingEnd != end) setPaddingRelative(start, paddingTop, end, paddingBottom)
        if (high == SECOND_TARGET) oneLine(MeasureSpec.getSize(widthMeasureSpec) - paddingLeft - paddingRight)
        super.onMeasure(widthMeasureSpec, heightMeasureSpec)
    }

    /** A key of the second rank has no second line: longer words are smaller, as far as they can be read. */
    private fun oneLine(room: Int) {
        val words = full().measureText(text.toString())
        val size = if (words > room) maxOf(most * room / words * SLACK, style.sp(LEAST_TYPE).coerceAtMost(most)) else most
        setTextSize(TypedValue.COMPLEX_UNIT_PX, size)
    }

    override fun onDraw(canvas: Canvas) {
        super.onDraw(canvas)
        val half = held ?: return
        corner.color = currentTextColor
        val right = layoutDirection == LAYOUT_DIRECTION_LTR
        corner.textAlign = if (right) Paint.Align.RIGHT else Paint.Align.LEFT
        val x = if (right) width - style.dp(8f) else style.dp(8f)
        canvas.drawText(half.label, x, corner.textSize + style.dp(4f), corner)
    }

    override fun onInitializeAccessibilityNodeInfo(info: AccessibilityNodeInfo) {
        super.onInitializeAccessibilityNodeInfo(info)
        held?.let {
            info.addAction(AccessibilityNodeInfo.AccessibilityAction(AccessibilityNodeInfo.ACTION_LONG_CLICK, it.says))
        }
    }

    private fun paint(tone: Tone, chosen: Boolean) {
        if (painted && tone == this.tone && chosen == this.chosen) return
        painted = true
        this.tone = tone
        this.chosen = chosen
        val off = intArrayOf(-android.R.attr.state_enabled)
        val any = intArrayOf()
        val shape = GradientDrawable().apply { cornerRadius = style.dp(6f) }
        when (tone) {
            Tone.NOW -> {
                shape.color = ColorStateList(arrayOf(off, any), intArrayOf(style.ground, style.brass))
                shape.setStroke(style.dp(2), ColorStateList(arrayOf(off, any), intArrayOf(style.outline, style.brass)))
            }
            Tone.PLAIN -> {
                shape.setColor(style.ground)
                val edge = if (chosen) style.ink else style.outline
                shape.setStroke(style.dp(if (chosen) 3 else 1), edge)
            }
        }
        val mask = GradientDrawable().apply {
            cornerRadius = style.dp(6f)
            setColor(style.ink)
        }
        background = RippleDrawable(ColorStateList.valueOf(style.band), shape, mask)
        val on = if (tone == Tone.NOW) style.onBrass else style.ink
        // A chosen key can't be tapped, and is read all the same.
        setTextColor(ColorStateList(arrayOf(off, any), intArrayOf(if (chosen) style.ink else style.quiet, on)))
    }

    private companion object {
        /** The smallest type that such a key's words may have, in sp. */
        const val LEAST_TYPE = 12f
        const val SLACK = 0.98f
    }
}

/**
 * Keys side by side, equally wide, as many in a line as their words leave room for and no more than
 * `most`; a line is as high as its highest.
 */
class KeyFlow(
    private val style: Style,
    private val hands: Hands,
    private val most: Int = 3,
    private val grid: Boolean = false,
    private val high: Int = TARGET,
) : ViewGroup(style.context) {
    private val slots = Slots(this, { KeyView(style, hands, high) }) { view, key: Key -> bind(view, key) }
    private var size = SMALL
    private var tone: (Key) -> Tone = { Tone.PLAIN }
    private var half: (Key) -> Key? = { null }

    fun apply(keys: List<Key>, size: Float = SMALL, half: (Key) -> Key? = { null }, tone: (Key) -> Tone = { Tone.PLAIN }) {
        this.size = size
        this.half = half
        this.tone = tone
        slots.apply(keys)
        show(keys.isNotEmpty())
    }

    private fun bind(view: KeyView, key: Key) = view.bind(key, size, tone(key), half(key))

    private fun shown() = (0 until childCount).map(::getChildAt).filter { it.visibility != View.GONE }

    /** The most in a line, so that no word on a key has to be broken. */
    private fun across(width: Int, keys: List<View>): Int {
        val gap = style.dp(GAP)
        if (grid) return most
        for (count in minOf(most, keys.size) downTo 2) {
            val room = (width - gap * (count - 1)) / count
            if (keys.all { it is KeyView && it.longestWord() <= room && it.linesIn(room) <= MOST_LINES }) {
                // As many lines as that takes, and those about equally full.
                val lines = (keys.size + count - 1) / count
                return (keys.size + lines - 1) / lines
            }
        }
        return 1
    }

    override fun onMeasure(widthMeasureSpec: Int, heightMeasureSpec: Int) {
        val width = MeasureSpec.getSize(widthMeasureSpec)
        setMeasuredDimension(width, rows(width) { _, _, _, _, _ -> })
    }

    override fun onLayout(changed: Boolean, l: Int, t: Int, r: Int, b: Int) {
        val rtl = layoutDirection == LAYOUT_DIRECTION_RTL
        rows(r - l) { view, x, y, width, height ->
            val left = if (rtl) (r - l) - x - width else x
            view.layout(left, y, left + width, y + height)
        }
    }

    private fun rows(width: Int, place: (View, Int, Int, Int, Int) -> Unit): Int {
        val keys = shown()
        if (keys.isEmpty()) return 0
        val gap = style.dp(GAP)
        val across = across(width, keys)
        var y = 0
        keys.chunked(across).forEachIndexed { row, line ->
            if (row > 0) y += gap
            // The last line's keys share its whole width, unless they stand in a grid.
            val count = if (grid) across else line.size
            val each = (width - gap * (count - 1)) / count
            val exact = MeasureSpec.makeMeasureSpec(each, MeasureSpec.EXACTLY)
            line.forEach { it.measure(exact, MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED)) }
            val height = line.maxOf { it.measuredHeight }
            line.forEachIndexed { column, view ->
                view.measure(exact, MeasureSpec.makeMeasureSpec(height, MeasureSpec.EXACTLY))
                place(view, column * (each + gap), y, each, height)
            }
            y += height
        }
        return y
    }

    private companion object {
        const val MOST_LINES = 2
    }
}
