package barwright.android.screen

import android.view.View
import android.widget.LinearLayout
import barwright.android.R
import barwright.android.view.GAP
import barwright.android.view.Hands
import barwright.android.view.KeyView
import barwright.android.view.Style
import barwright.android.view.Warnings
import barwright.android.view.put
import barwright.android.view.show

/** A word over the screen: a refusal, or what the device doesn't allow. It stays until it is answered. */
class Banner(private val style: Style, hands: Hands) : LinearLayout(style.context) {
    private val words = Warnings(style).apply { accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE }
    private val yes = KeyView(style, hands)
    private val close = KeyView(style, hands)

    init {
        orientation = VERTICAL
        setPadding(style.dp(16), style.dp(4), style.dp(16), style.dp(8))
        put(words)
        val keys = style.line()
        keys.addView(yes, LayoutParams(0, LayoutParams.MATCH_PARENT, 1f).apply { marginEnd = style.dp(GAP) })
        keys.addView(close, LayoutParams(0, LayoutParams.MATCH_PARENT, 1f))
        put(keys, above = style.dp(6))
        show(false)
    }

    fun say(reason: String, yes: Int? = null, no: Int = R.string.understood, does: () -> Unit = {}) {
        words.apply(listOf(reason))
        this.yes.show(yes != null)
        if (yes != null) {
            this.yes.own(style.context.getString(yes)) {
                clear()
                does()
            }
        }
        close.own(style.context.getString(no)) { clear() }
        show(true)
    }

    fun clear() = show(false)
}
