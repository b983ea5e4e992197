package barwright.android.view

import android.view.View
import android.view.ViewGroup
import android.widget.TextView

/**
 * Words with keys beside them. Where the keys leave the words no room, in a long language, in large type
 * or on a narrow screen, they stand under them: a word is never broken for a key's sake. Keys that are
 * wider than a line together leave the widest a line of its own.
 */
class Beside(private val style: Style, private val words: ViewGroup, vararg keys: View) : ViewGroup(style.context) {
    private val keys = keys.asList()
    private val gap = style.dp(GAP)
    private val space = style.dp(4)
    private var under = false
    private var alone: View? = null

    init {
        // As wide as it wants: a text of a set width would not say that a longer word stands in it now.
        for (at in 0 until words.childCount) words.getChildAt(at).layoutParams.width = LayoutParams.WRAP_CONTENT
        addView(words)
        this.keys.forEach { addView(it) }
    }

    private fun shown() = keys.filter { it.visibility != GONE }

    private fun taken(keys: List<View>) = keys.sumOf { it.measuredWidth } + gap * (keys.size - 1).coerceAtLeast(0)

    override fun onMeasure(widthMeasureSpec: Int, heightMeasureSpec: Int) {
        val width = MeasureSpec.getSize(widthMeasureSpec)
        val any = MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED)
        val keys = shown()
        keys.forEach { it.measure(MeasureSpec.makeMeasureSpec(width, MeasureSpec.AT_MOST), any) }
        alone = if (taken(keys) > width) keys.maxBy { it.measuredWidth } else null
        val room = width - taken(keys) - gap
        under = keys.isNotEmpty() && longestWord() > room || alone != null
        words.measure(MeasureSpec.makeMeasureSpec(if (keys.isEmpty() || under) width else room, MeasureSpec.EXACTLY), any)
        if (keys.isNotEmpty() && !under && words.measuredHeight > MOST_LINES * style.sp(SMALL) * LINE) {
            under = true
            words.measure(MeasureSpec.makeMeasureSpec(width, MeasureSpec.EXACTLY), any)
        }
        val high = (keys - setOfNotNull(alone)).maxOfOrNull { it.measuredHeight } ?: 0
        val height = if (under) words.measuredHeight + space + high else maxOf(words.measuredHeight, high)
        setMeasuredDimension(width, height + (alone?.let { it.measuredHeight + space } ?: 0))
    }

    private fun longestWord(): Float = (0 until words.childCount).map(words::getChildAt)
        .filterIsInstance<TextView>().filter { it.visibility != GONE }
        .flatMap { view -> view.text.split(' ').map { view.paint.measureText(it) } }
        .maxOrNull() ?: 0f

    override fun onLayout(changed: Boolean, l: Int, t: Int, r: Int, b: Int) {
        val width = r - l
        val height = b - t
        val rtl = layoutDirection == LAYOUT_DIRECTION_RTL
        fun place(view: View, x: Int, y: Int) {
            val left = if (rtl) width - x - view.measuredWidth else x
            view.layout(left, y, left + view.measuredWidth, y + view.measuredHeight)
        }
        place(words, 0, if (under) 0 else (height - words.measuredHeight) / 2)
        var from = if (under) words.measuredHeight + space else 0
        alone?.let {
            place(it, width - it.measuredWidth, from)
            from += it.measuredHeight + space
        }
        val keys = shown() - setOfNotNull(alone)
        var x = width - taken(keys)
        for (key in keys) {
            place(key, x, from + (height - from - key.measuredHeight) / 2)
            x += key.measuredWidth + gap
        }
    }

    private companion object {
        const val MOST_LINES = 4
        const val LINE = 1.3f
    }
}
