package barwright.android.view

import android.util.TypedValue
import android.view.View
import android.view.accessibility.AccessibilityEvent
import android.widget.TextView

/** One line of the largest type, as large as its room and the screen allow. */
class BigText(private val style: Style) : TextView(style.context) {
    /** The largest it may be, in sp. */
    var most = BIG
        set(size) {
            if (size != field) requestLayout()
            field = size
        }

    /** A figure that changes every second says so to no one; it is read when it is looked at. */
    var quiet = false

    init {
        tabular(bold = true)
        setTextColor(style.ink)
        maxLines = 1
        includeFontPadding = false
        setPadding(0, style.dp(2), 0, style.dp(2))
        importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_YES
    }

    override fun onMeasure(widthMeasureSpec: Int, heightMeasureSpec: Int) {
        // A low screen has less to give.
        val largest = minOf(style.sp(most), style.context.resources.displayMetrics.heightPixels * SHARE)
        val room = MeasureSpec.getSize(widthMeasureSpec) - paddingLeft - paddingRight
        var size = largest
        if (MeasureSpec.getMode(widthMeasureSpec) != MeasureSpec.UNSPECIFIED && room > 0) {
            paint.textSize = largest
            val wants = paint.measureText(text.toString())
            if (wants > room) size = (largest * room / wants * SLACK).coerceAtLeast(style.sp(SMALL))
        }
        setTextSize(TypedValue.COMPLEX_UNIT_PX, size)
        super.onMeasure(widthMeasureSpec, heightMeasureSpec)
    }

    override fun sendAccessibilityEventUnchecked(event: AccessibilityEvent) {
        if (quiet && event.eventType == AccessibilityEvent.TYPE_WINDOW_CONTENT_CHANGED) return
        super.sendAccessibilityEventUnchecked(event)
    }

    private companion object {
        const val SHARE = 0.16f
        const val SLACK = 0.98f
    }
}
