package barwright.android.view

import android.graphics.Canvas
import android.graphics.Color
import android.graphics.Paint
import android.graphics.RectF
import android.view.View
import barwright.core.BarZone
import barwright.core.PlateDrawing

/**
 * The loaded sleeve to scale, side on: shaft, inner collar, plates with their numbers, the lock, the
 * sleeve's end. One scale holds along the sleeve and one across it; the sleeve is drawn longer than
 * it is, so that a thin plate has room for its number.
 */
class BarView(private val style: Style) : View(style.context) {
    private var plates: List<PlateDrawing> = emptyList()
    private var collar = false
    private var small = false
    private val fill = Paint(Paint.ANTI_ALIAS_FLAG)
    private val edge = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        this.style = Paint.Style.STROKE
        strokeWidth = this@BarView.style.dp(1f)
    }
    private val number = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        textAlign = Paint.Align.CENTER
        isFakeBoldText = true
    }
    private val box = RectF()

    /** Shows a zone's drawing; smaller where nothing is to be changed. */
    fun apply(zone: BarZone) {
        show(zone.drawn)
        val spoken = (listOf(zone.bar) + zone.plates.map { it.label } + zone.counts)
            .filter { it.isNotEmpty() }.joinToString(", ")
        if (contentDescription?.toString() != spoken) contentDescription = spoken
        val nowSmall = zone.change.isEmpty()
        if (nowSmall != small) requestLayout()
        if (zone.plates != plates || zone.collar != collar || nowSmall != small) invalidate()
        plates = zone.plates
        collar = zone.collar
        small = nowSmall
    }

    override fun onMeasure(widthMeasureSpec: Int, heightMeasureSpec: Int) {
        val room = style.context.resources.configuration.screenHeightDp
        val low = room < LOW
        val height = when {
            small && low -> 48
            small -> 72
            low -> 76
            // A large screen has the room to be read from further off.
            else -> maxOf(120, room / 8)
        }
        setMeasuredDimension(MeasureSpec.getSize(widthMeasureSpec), style.dp(height))
    }

    override fun onDraw(canvas: Canvas) {
        if (layoutDirection == LAYOUT_DIRECTION_RTL) canvas.scale(-1f, 1f, width / 2f, height / 2f)
        val middle = height / 2f
        val across = height.toFloat()
        val shaft = width * 0.1f
        val collarWidth = style.dp(10f)
        val end = width - style.dp(8f)
        val begin = shaft + collarWidth
        val sleeve = minOf(end - begin, across * SLEEVE_TO_PLATE * LENGTHEN)
        fill.color = style.steel
        canvas.drawRect(0f, middle - across * 0.035f, begin, middle + across * 0.035f, fill)
        box.set(shaft, middle - across * 0.11f, begin, middle + across * 0.11f)
        canvas.drawRoundRect(box, style.dp(2f), style.dp(2f), fill)
        box.set(begin, middle - across * 0.055f, begin + sleeve, middle + across * 0.055f)
        canvas.drawRoundRect(box, style.dp(3f), style.dp(3f), fill)
        var x = begin
        for (plate in plates) {
            val wide = maxOf(sleeve * plate.width.toInt() / THOUSAND, style.dp(14f))
            val tall = across * plate.height.toInt() / THOUSAND
            box.set(x, middle - tall / 2, x + wide, middle + tall / 2)
            draw(canvas, plate)
            x += wide
        }
        if (collar) {
            fill.color = style.steel
            edge.color = style.plateEdge
            box.set(x + style.dp(1f), middle - across * 0.13f, x + style.dp(9f), middle + across * 0.13f)
            canvas.drawRoundRect(box, style.dp(2f), style.dp(2f), fill)
            canvas.drawRoundRect(box, style.dp(2f), style.dp(2f), edge)
        }
    }

    private fun draw(canvas: Canvas, plate: PlateDrawing) {
        fill.color = if (plate.colour.isEmpty()) style.plate else Color.parseColor(plate.colour)
        edge.color = style.plateEdge
        box.inset(edge.strokeWidth / 2, edge.strokeWidth / 2)
        canvas.drawRoundRect(box, style.dp(3f), style.dp(3f), fill)
        canvas.drawRoundRect(box, style.dp(3f), style.dp(3f), edge)
        // The number stands upright along the plate's edge, as large as it has room for.
        val words = plate.label
        number.color = Color.parseColor(plate.ink)
        number.textSize = minOf(box.width() * 0.8f, style.sp(SMALL))
        val long = number.measureText(words)
        val room = box.height() - style.dp(4f)
        if (long > room) number.textSize *= room / long
        canvas.save()
        if (layoutDirection == LAYOUT_DIRECTION_RTL) canvas.scale(-1f, 1f, box.centerX(), box.centerY())
        canvas.rotate(-90f, box.centerX(), box.centerY())
        canvas.drawText(words, box.centerX(), box.centerY() - (number.ascent() + number.descent()) / 2, number)
        canvas.restore()
    }

    private companion object {
        const val THOUSAND = 1000f
        const val LOW = 640

        /** 415 mm of sleeve to 450 mm of plate. */
        const val SLEEVE_TO_PLATE = 415f / 450f

        /** So much longer than it is. */
        const val LENGTHEN = 2.6f
    }
}
