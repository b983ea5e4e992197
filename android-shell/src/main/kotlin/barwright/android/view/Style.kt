package barwright.android.view

import android.content.Context
import android.graphics.Typeface
import android.graphics.drawable.GradientDrawable
import android.text.Layout
import android.util.TypedValue
import android.view.View
import android.view.ViewGroup
import android.view.ViewGroup.LayoutParams.MATCH_PARENT
import android.view.ViewGroup.LayoutParams.WRAP_CONTENT
import android.widget.LinearLayout
import android.widget.ScrollView
import android.widget.TextView
import barwright.android.R

/** The three sizes of type, in sp. */
const val BIG = 80f
const val MID = 24f
const val SMALL = 16f

/** At least so high is what a thumb hits, in dp. */
const val TARGET = 64

/** And so high what records nothing and is tapped with the phone in hand. */
const val SMALL_TARGET = 48

/** And so high what is of the second rank: a set without its effort, a set cut short. */
const val SECOND_TARGET = 30

/** The largest type on it, in dp. */
const val SECOND_TYPE = 18f

/** And so far apart. */
const val GAP = 12

/** Colours and measures of a theme. */
class Style(val context: Context) {
    val ground = context.getColor(R.color.ground)
    val ink = context.getColor(R.color.ink)
    val quiet = context.getColor(R.color.quiet)
    val outline = context.getColor(R.color.outline)
    val brass = context.getColor(R.color.brass)
    val onBrass = context.getColor(R.color.on_brass)
    val warn = context.getColor(R.color.warn)
    val steel = context.getColor(R.color.steel)
    val plate = context.getColor(R.color.plate)
    val plateEdge = context.getColor(R.color.plate_edge)
    val done = context.getColor(R.color.done)
    val band = context.getColor(R.color.band)

    private val screen = context.resources.configuration

    /** A screen on its side: what is read stands beside what is tapped. */
    val beside = screen.screenWidthDp > screen.screenHeightDp && screen.screenWidthDp >= 560

    /** A screen with little height to give. */
    val low = screen.screenHeightDp < 640

    /** Text so large that words stand under each other rather than side by side. */
    val largeText = screen.fontScale > 1.3f

    /** No room to spare above the thumb: what goes on the bar stands over all but the countdown. */
    val tight = (low && !beside) || largeText

    fun dp(count: Int): Int = dp(count.toFloat()).toInt()

    fun dp(count: Float): Float =
        TypedValue.applyDimension(TypedValue.COMPLEX_UNIT_DIP, count, context.resources.displayMetrics)

    fun sp(size: Float): Float =
        TypedValue.applyDimension(TypedValue.COMPLEX_UNIT_SP, size, context.resources.displayMetrics)

    fun text(size: Float = SMALL, colour: Int = ink, bold: Boolean = false) = TextView(context).apply {
        setTextSize(TypedValue.COMPLEX_UNIT_SP, size)
        setTextColor(colour)
        tabular(bold)
        // Only a word that is longer than its line is divided, as its language does.
        breakStrategy = Layout.BREAK_STRATEGY_SIMPLE
        hyphenationFrequency = Layout.HYPHENATION_FREQUENCY_NORMAL
    }

    /** The line round what can be tapped and is no key. */
    fun frame() = GradientDrawable().apply {
        cornerRadius = dp(6f)
        setStroke(dp(1), outline)
    }

    fun column() = LinearLayout(context).apply { orientation = LinearLayout.VERTICAL }

    fun line() = LinearLayout(context).apply {
        orientation = LinearLayout.HORIZONTAL
        // By baselines a tall child would be pushed out of the line.
        isBaselineAligned = false
    }
}

/** Figures of one width, so that nothing jumps when a number changes. */
fun TextView.tabular(bold: Boolean = false) {
    fontFeatureSettings = "tnum"
    typeface = Typeface.create("sans-serif", if (bold) Typeface.BOLD else Typeface.NORMAL)
    textDirection = View.TEXT_DIRECTION_FIRST_STRONG_LTR
    textAlignment = View.TEXT_ALIGNMENT_VIEW_START
}

/** Scrolls, and shows by its fading edge that there is more. */
fun Style.scroll(what: View) = ScrollView(context).apply {
    addView(what)
    fades(this@scroll)
}

/** The edge that fades is no higher than the screen can spare. */
fun ScrollView.fades(style: Style) {
    isVerticalFadingEdgeEnabled = true
    setFadingEdgeLength(style.dp(if (style.low) 8 else 24))
}

fun wide() = LinearLayout.LayoutParams(MATCH_PARENT, WRAP_CONTENT)

fun LinearLayout.put(view: View, above: Int = 0, params: LinearLayout.LayoutParams = wide()): View {
    params.topMargin = above
    addView(view, params)
    return view
}

/** Sets a text, and takes no room without one. Setting the same text again costs nothing. */
fun TextView.say(words: String) {
    show(words.isNotEmpty())
    if (text.toString() != words) text = words
}

fun View.show(shown: Boolean) {
    val want = if (shown) View.VISIBLE else View.GONE
    if (visibility != want) visibility = want
}

/**
 * As many children as there are items, kept and bound again: a list that changes makes views only
 * where it has grown beyond what it ever was.
 */
class Slots<V : View, T>(
    private val into: ViewGroup,
    private val make: () -> V,
    private val bind: (V, T) -> Unit,
) {
    private val views = ArrayList<V>()

    fun apply(items: List<T>) {
        while (views.size < items.size) {
            val view = make()
            views.add(view)
            into.addView(view)
        }
        views.forEachIndexed { at, view ->
            view.show(at < items.size)
            if (at < items.size) bind(view, items[at])
        }
    }
}
