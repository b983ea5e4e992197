package barwright.android.view

import android.graphics.Canvas
import android.graphics.Paint
import android.view.View
import barwright.core.MuscleBar

/** One muscle: planned as an outline, done as a fill; left and right apart where a side matters. */
class MuscleBarView(private val style: Style) : View(style.context) {
    private var bar: MuscleBar? = null
    private var full = 1u
    private val fill = Paint()
    private val edge = Paint().apply {
        this.style = Paint.Style.STROKE
        strokeWidth = this@MuscleBarView.style.dp(2f)
    }

    init {
        importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
    }

    fun apply(bar: MuscleBar, full: UInt) {
        if (bar == this.bar && full == this.full) return
        this.bar = bar
        this.full = full
        invalidate()
    }

    override fun onMeasure(widthMeasureSpec: Int, heightMeasureSpec: Int) =
        setMeasuredDimension(MeasureSpec.getSize(widthMeasureSpec), style.dp(22))

    override fun onDraw(canvas: Canvas) {
        val bar = bar ?: return
        val inset = edge.strokeWidth / 2
        val rtl = layoutDirection == LAYOUT_DIRECTION_RTL
        canvas.save()
        if (rtl) canvas.scale(-1f, 1f, width / 2f, height / 2f)
        fill.color = if (bar.behind) style.warn else style.done
        val left = bar.leftHalves
        val right = bar.rightHalves
        if (left != null && right != null) {
            val middle = height / 2f
            canvas.drawRect(0f, inset, long(left), middle - style.dp(1f), fill)
            canvas.drawRect(0f, middle + style.dp(1f), long(right), height - inset, fill)
        } else {
            canvas.drawRect(0f, inset, long(bar.doneHalves), height - inset, fill)
        }
        edge.color = style.ink
        if (bar.plannedHalves > 0u) {
            canvas.drawRect(inset, inset, maxOf(long(bar.plannedHalves) - inset, inset), height - inset, edge)
        }
        canvas.restore()
    }

    private fun long(halves: UInt): Float =
        if (full == 0u) 0f else width * (halves.toFloat() / full.toFloat()).coerceAtMost(1f)
}
