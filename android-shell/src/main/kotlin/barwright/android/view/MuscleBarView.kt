package barwright.android.view

import android.graphics.Canvas
import android.graphics.Paint
import android.view.View
import barwright.core.MuscleBar

/**
 * One muscle: planned as an outline, done as a fill, its sets under six repetitions hatched; left and
 * right apart where a side matters, and then the hatching counts the side that has less.
 */
class MuscleBarView(private val style: Style) : View(style.context) {
    private var bar: MuscleBar? = null
    private var full = 1u
    private val fill = Paint()
    private val hatch = Paint(Paint.ANTI_ALIAS_FLAG).apply { strokeWidth = this@MuscleBarView.style.dp(1.5f) }
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
            done(canvas, left, if (left <= right) bar.underSixHalves else 0u, inset, middle - style.dp(1f))
            done(canvas, right, if (right < left) bar.underSixHalves else 0u, middle + style.dp(1f), height - inset)
        } else {
            done(canvas, bar.doneHalves, bar.underSixHalves, inset, height - inset)
        }
        edge.color = style.ink
        if (bar.plannedHalves > 0u) {
            canvas.drawRect(inset, inset, maxOf(long(bar.plannedHalves) - inset, inset), height - inset, edge)
        }
        canvas.restore()
    }

    private fun done(canvas: Canvas, halves: UInt, hatched: UInt, top: Float, bottom: Float) {
        val end = long(halves)
        canvas.drawRect(0f, top, end, bottom, fill)
        if (hatched == 0u) return
        canvas.save()
        canvas.clipRect(0f, top, long(hatched), bottom)
        hatch.color = style.ground
        val high = bottom - top
        var x = -high
        while (x < end) {
            canvas.drawLine(x, bottom, x + high, top, hatch)
            x += style.dp(6f)
        }
        canvas.restore()
    }

    private fun long(halves: UInt): Float =
        if (full == 0u) 0f else width * (halves.toFloat() / full.toFloat()).coerceAtMost(1f)
}
