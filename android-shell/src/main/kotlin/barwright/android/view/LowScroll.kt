package barwright.android.view

import android.widget.ScrollView

/** Scrolls what is higher than its share of the room there is. */
class LowScroll(style: Style, private val share: Float) : ScrollView(style.context) {
    init {
        fades(style)
    }

    override fun onMeasure(widthMeasureSpec: Int, heightMeasureSpec: Int) {
        val room = MeasureSpec.getSize(heightMeasureSpec)
        val most = if (room > 0) (room * share).toInt() else 0
        super.onMeasure(widthMeasureSpec, MeasureSpec.makeMeasureSpec(most, MeasureSpec.AT_MOST))
    }
}
