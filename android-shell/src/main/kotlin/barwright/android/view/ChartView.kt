package barwright.android.view

import android.graphics.Canvas
import android.graphics.Paint
import android.graphics.Path
import android.view.View
import barwright.core.Chart
import barwright.core.ChartAxis
import barwright.core.ChartSeries
import barwright.core.SeriesKind
import kotlin.math.abs

/** A chart as the core lays it out: places on two axes become places in a rectangle, nothing more. */
class ChartView(private val style: Style) : View(style.context) {
    private var chart: Chart? = null
    private val paint = Paint(Paint.ANTI_ALIAS_FLAG)
    private val words = Paint(Paint.ANTI_ALIAS_FLAG).apply { textSize = this@ChartView.style.sp(SMALL) }
    private val path = Path()

    fun apply(chart: Chart?) {
        show(chart != null)
        if (chart == this.chart) return
        this.chart = chart
        contentDescription = chart?.aloud
        requestLayout()
        invalidate()
    }

    override fun onMeasure(widthMeasureSpec: Int, heightMeasureSpec: Int) {
        val width = MeasureSpec.getSize(widthMeasureSpec)
        val drawing = minOf(maxOf(width * 2 / 3, style.dp(200)), style.dp(340))
        setMeasuredDimension(width, drawing + legend(width) { _, _, _ -> }.toInt())
    }

    /** What each series is, line by line as the words have room; answers how high that is. */
    private fun legend(width: Int, place: (ChartSeries, Float, Float) -> Unit): Float {
        val series = chart?.series ?: return 0f
        val mark = style.dp(28f)
        // In smaller type where the longest would hang over.
        words.textSize = style.sp(SMALL)
        val longest = series.maxOfOrNull { words.measureText(it.label) } ?: 0f
        if (longest > width - mark) words.textSize *= (width - mark) / longest
        var x = 0f
        var y = 0f
        for (one in series) {
            val long = mark + words.measureText(one.label)
            if (x > 0 && x + long > width) {
                x = 0f
                y += words.fontSpacing
            }
            place(one, x, y)
            x += long + style.dp(16f)
        }
        val high = y + words.fontSpacing + style.dp(6f)
        words.textSize = style.sp(SMALL)
        return high
    }

    private fun drawLegend(canvas: Canvas): Float {
        words.textAlign = Paint.Align.LEFT
        return legend(width) { series, x, y ->
            val middle = y + words.fontSpacing / 2
            val end = x + style.dp(22f)
            when (series.kind) {
                SeriesKind.BAND -> {
                    band()
                    canvas.drawRect(x, middle - style.dp(6f), end, middle + style.dp(6f), paint)
                }
                SeriesKind.LINE -> {
                    line()
                    canvas.drawLine(x, middle, end, middle, paint)
                }
                SeriesKind.MARKS -> mark(canvas, x + style.dp(11f), middle)
                SeriesKind.FAILED -> cross(canvas, x + style.dp(11f), middle)
            }
            words.color = style.quiet
            canvas.drawText(series.label, x + style.dp(28f), y - words.ascent(), words)
        }
    }

    private fun band() {
        paint.style = Paint.Style.FILL
        paint.color = style.band
    }

    private fun line() {
        paint.style = Paint.Style.STROKE
        paint.strokeWidth = style.dp(2.5f)
        paint.color = style.ink
    }

    private fun mark(canvas: Canvas, x: Float, y: Float) {
        paint.style = Paint.Style.FILL
        paint.color = style.brass
        canvas.drawCircle(x, y, style.dp(4f), paint)
        paint.style = Paint.Style.STROKE
        paint.strokeWidth = style.dp(1f)
        paint.color = style.ink
        canvas.drawCircle(x, y, style.dp(4f), paint)
    }

    private fun cross(canvas: Canvas, x: Float, y: Float) {
        paint.style = Paint.Style.STROKE
        paint.strokeWidth = style.dp(2.5f)
        paint.color = style.warn
        val arm = style.dp(4.5f)
        canvas.drawLine(x - arm, y - arm, x + arm, y + arm, paint)
        canvas.drawLine(x - arm, y + arm, x + arm, y - arm, paint)
    }

    override fun onDraw(canvas: Canvas) {
        val chart = chart ?: return
        val above = drawLegend(canvas)
        val line = words.fontSpacing
        val left = (chart.up.ticks.maxOfOrNull { words.measureText(it.label) } ?: 0f) + style.dp(8f)
        val top = above + line * 1.4f
        val bottom = height - line * 1.4f
        val right = width - style.dp(8f)
        fun x(at: Long) = left + (right - left) * chart.across.share(at)
        fun y(at: Long) = bottom - (bottom - top) * chart.up.share(at)

        words.color = style.quiet
        words.textAlign = Paint.Align.LEFT
        canvas.drawText(chart.up.label, 0f, above - words.ascent(), words)
        paint.style = Paint.Style.STROKE
        paint.strokeWidth = style.dp(1f)
        paint.color = style.outline
        words.textAlign = Paint.Align.RIGHT
        var under = Float.POSITIVE_INFINITY
        for (tick in chart.up.ticks) {
            canvas.drawLine(left, y(tick.at), right, y(tick.at), paint)
            // In large type a rung too near to the last number has none.
            if (abs(under - y(tick.at)) < words.textSize) continue
            under = y(tick.at)
            canvas.drawText(tick.label, left - style.dp(6f), y(tick.at) - (words.ascent() + words.descent()) / 2, words)
        }
        words.textAlign = Paint.Align.CENTER
        var free = 0f
        for (tick in chart.across.ticks) {
            val half = words.measureText(tick.label) / 2
            val at = x(tick.at).coerceIn(half, width - half)
            // A label that would run into the one before it is left out; the chart is also said in words.
            if (at - half < free) continue
            canvas.drawText(tick.label, at, height - words.descent(), words)
            free = at + half + style.dp(8f)
        }
        for (series in chart.series) {
            when (series.kind) {
                SeriesKind.BAND -> {
                    path.reset()
                    series.points.forEachIndexed { at, point ->
                        if (at == 0) path.moveTo(x(point.x), y(point.high)) else path.lineTo(x(point.x), y(point.high))
                    }
                    series.points.asReversed().forEach { path.lineTo(x(it.x), y(it.low)) }
                    path.close()
                    band()
                    canvas.drawPath(path, paint)
                }
                SeriesKind.LINE -> {
                    path.reset()
                    series.points.forEachIndexed { at, point ->
                        if (at == 0) path.moveTo(x(point.x), y(point.low)) else path.lineTo(x(point.x), y(point.low))
                    }
                    line()
                    canvas.drawPath(path, paint)
                }
                SeriesKind.MARKS -> for (point in series.points) mark(canvas, x(point.x), y(point.low))
                SeriesKind.FAILED -> for (point in series.points) cross(canvas, x(point.x), y(point.low))
            }
        }
    }

    private fun ChartAxis.share(at: Long): Float =
        if (to == from) 0.5f else (at - from).toFloat() / (to - from)
}
