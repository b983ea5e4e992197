package barwright.android

import android.app.Activity
import android.content.Intent as Call
import android.graphics.Bitmap
import android.graphics.Canvas
import android.graphics.Rect
import android.os.Bundle
import android.os.Looper
import android.os.SystemClock
import android.view.MotionEvent
import android.view.View
import android.view.ViewGroup
import android.widget.EditText
import android.widget.TextView
import barwright.android.view.KeyView
import barwright.core.Intent
import barwright.core.Look
import barwright.core.Reading
import barwright.core.Screen
import org.junit.After
import org.junit.Before
import org.junit.runner.RunWith
import org.junit.runners.model.FrameworkMethod
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.android.controller.ActivityController
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.robolectric.internal.bytecode.InstrumentationConfiguration
import java.io.File
import java.io.FileOutputStream
import java.time.Duration

/**
 * Loads the core's bindings once for the process: their library keeps one table of callbacks, and
 * each sandbox would load its own.
 */
class ShellRunner(of: Class<*>) : RobolectricTestRunner(of) {
    override fun createClassLoaderConfig(method: FrameworkMethod): InstrumentationConfiguration =
        InstrumentationConfiguration.Builder(super.createClassLoaderConfig(method))
            .doNotAcquirePackage("barwright.core.")
            .doNotAcquirePackage("uniffi.")
            .build()
}

/** A clock that a test sets; a Monday evening in January. */
class TestClocks : Clocks {
    var wallMs = MONDAY_MS
    var bootMs: Long? = 5_000_000L
    var bootId: String? = "boot 7"
    var offsetMinutes = 60

    /** How often it was looked at. */
    @Volatile
    var reads = 0
        private set

    override fun read(): Reading {
        reads += 1
        return Reading(wallMs, offsetMinutes, bootMs, bootId)
    }

    fun pass(ms: Long) {
        wallMs += ms
        bootMs = bootMs?.plus(ms)
    }

    companion object {
        /** 2026-01-12T18:05:00+01:00. */
        const val MONDAY_MS = 1_768_237_500_000L
    }
}

/** A phone with the shell on it, worked by touch. */
@RunWith(ShellRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], qualifiers = "w411dp-h914dp-night-420dpi")
abstract class PhoneTest {
    val clocks = TestClocks()
    val app: BarwrightApp get() = RuntimeEnvironment.getApplication() as BarwrightApp
    private var controller: ActivityController<MainActivity>? = null
    val running: Boolean get() = controller != null
    val activity: MainActivity get() = controller!!.get()

    @Before
    fun setClocks() {
        app.clocks = clocks
    }

    @After
    fun endProcess() {
        controller?.run { if (!get().isDestroyed) pause().stop().destroy() }
        controller = null
        settle()
        end()
    }

    private fun end() {
        val thread = app.core.looper.thread
        app.core.quit()
        thread.join()
        shadowOf(Looper.getMainLooper()).idle()
    }

    // The phone

    fun start(call: Call? = null, saved: Bundle? = null) {
        val made = if (call == null) Robolectric.buildActivity(MainActivity::class.java)
        else Robolectric.buildActivity(MainActivity::class.java, call)
        controller = made
        if (saved == null) made.setup() else made.setup(saved)
        settle()
    }

    fun leave(): Bundle {
        val saved = Bundle()
        controller!!.pause().stop().saveInstanceState(saved)
        settle()
        return saved
    }

    fun come() {
        controller!!.restart().start().resume().visible()
        settle()
    }

    fun recreate() {
        controller!!.recreate()
        settle()
    }

    fun rotate(qualifiers: String) {
        RuntimeEnvironment.setQualifiers(qualifiers)
        controller!!.recreate()
        settle()
    }

    /** Android ends the process: what was saved stays, everything else is gone. */
    fun die(): Bundle {
        val saved = leave()
        controller!!.destroy()
        controller = null
        end()
        app.begin()
        return saved
    }

    /** The device says that something has changed. */
    fun broadcast(action: String) {
        app.sendBroadcast(Call(action).setPackage(app.packageName))
        settle()
    }

    /** Until nothing is on its way: the core's thread, then the main one, and again. */
    fun settle() {
        repeat(4) {
            if (app.core.looper.thread.isAlive) shadowOf(app.core.looper).idle()
            // A frame's time, so that what was shown is laid out.
            shadowOf(Looper.getMainLooper()).idleFor(Duration.ofMillis(20))
        }
    }

    /** Time goes by on every clock there is. */
    fun pass(seconds: Long) {
        clocks.pass(seconds * 1000)
        shadowOf(Looper.getMainLooper()).idleFor(Duration.ofSeconds(seconds))
        settle()
    }

    // The core, behind the screens' back

    fun dispatch(intent: Intent): Answer {
        var answer: Answer? = null
        app.core.dispatch(intent) { answer = it }
        settle()
        return answer!!
    }

    fun ask(look: Look): Screen {
        var answer: Answer? = null
        app.core.view(look) { answer = it }
        settle()
        return when (val given = answer!!) {
            is Answer.Shown -> given.screen
            is Answer.Not -> throw AssertionError("refused: ${given.why}")
        }
    }

    /** The demo's gym and plan, adopted, with the maxes that the plan goes by. */
    fun prepare(gym: String = demo("gym.toml"), plan: String = demo("plan.toml")) {
        recorded(Intent.AddGym(gym))
        recorded(Intent.ChooseGym("Boathouse cellar"))
        recorded(Intent.AdoptPlan(plan))
        recorded(Intent.Write("body-mass", "82.4 kg"))
        for ((lift, max) in listOf("back-squat" to "142.5 kg", "bench-press" to "97.5 kg", "deadlift" to "175 kg", "overhead-press" to "62.5 kg", "power-clean" to "82.5 kg")) {
            recorded(Intent.Write("max:$lift", max))
        }
    }

    /** The demo: the same plan and gym, and six weeks of invented history. */
    fun demoStore() {
        val store = File(app.filesDir, "store").apply { mkdirs() }
        File("target/demo.db").copyTo(File(store, "barwright.db"))
    }

    fun recorded(intent: Intent) {
        val answer = dispatch(intent)
        if (answer is Answer.Not) throw AssertionError("$intent: ${answer.why}")
    }

    fun demo(name: String): String = File("../core/app/src/engine/demo/$name").readText()

    // What is on the screen

    val root: ViewGroup get() = activity.window.decorView as ViewGroup

    fun views(of: View = root): Sequence<View> = sequence {
        if (of.visibility == View.VISIBLE) {
            yield(of)
            if (of is ViewGroup) for (at in 0 until of.childCount) yieldAll(views(of.getChildAt(at)))
        }
    }

    fun texts(): List<String> = views().filterIsInstance<TextView>().map { it.text.toString() }.filter { it.isNotEmpty() }.toList()

    fun sees(words: String) = texts().any { words in it }

    fun keys(): List<KeyView> = views().filterIsInstance<KeyView>().toList()

    fun key(label: String): KeyView = keys().firstOrNull { it.text.toString() == label }
        ?: keys().firstOrNull { it.text.toString().startsWith(label) }
        ?: throw AssertionError("no key '$label' among ${keys().map { it.text }}; texts ${texts()}")

    fun hasKey(label: String) = keys().any { it.text.toString().startsWith(label) }

    fun tap(label: String) = touch(
        views().filterIsInstance<TextView>().firstOrNull { it !is KeyView && it.isClickable && it.text.toString() == label } ?: key(label),
    )

    /** A key by the core's own name of it, the same in every language. */
    fun named(id: String): KeyView? = keys().firstOrNull { it.tag == id }

    fun tapNamed(id: String) = touch(named(id) ?: throw AssertionError("no key $id: ${keys().map { it.tag }}"))

    fun hold(label: String) = touch(key(label), held = true)

    /** A key in the line of a sheet or a form that says `row`. */
    fun keyOf(row: String, label: String): KeyView {
        val words = views().filterIsInstance<TextView>().firstOrNull { it !is KeyView && it.text.toString() == row }
            ?: throw AssertionError("no line '$row': ${texts()}")
        val line = generateSequence(words.parent as View) { it.parent as? View }
            .first { it.javaClass.simpleName in listOf("RowView", "FormRowView") }
        val keys = views(line).filterIsInstance<KeyView>().toList()
        return keys.firstOrNull { it.text.toString() == label }
            ?: throw AssertionError("no key '$label' in '$row': ${keys.map { it.text }}")
    }

    /** How often the screen was touched; what is typed on the device's own keyboard is not counted. */
    var touches = 0

    /** A finger on the middle of a view, wherever it has to be scrolled to. */
    fun touch(view: View, held: Boolean = false) {
        touches += 1
        view.requestRectangleOnScreen(Rect(0, 0, view.width, view.height), true)
        settle()
        val at = IntArray(2).also(view::getLocationInWindow)
        val seen = Rect()
        if (!view.getGlobalVisibleRect(seen)) throw AssertionError("not on the screen: $view")
        val x = at[0] + view.width / 2f
        val y = at[1] + view.height / 2f
        val down = SystemClock.uptimeMillis()
        root.dispatchTouchEvent(MotionEvent.obtain(down, down, MotionEvent.ACTION_DOWN, x, y, 0))
        shadowOf(Looper.getMainLooper()).idleFor(Duration.ofMillis(if (held) 900 else 60))
        val up = SystemClock.uptimeMillis()
        root.dispatchTouchEvent(MotionEvent.obtain(down, up, MotionEvent.ACTION_UP, x, y, 0))
        settle()
    }

    fun type(field: String, text: String) {
        val entry = views().filterIsInstance<EditText>().first { it.contentDescription == field }
        entry.setText(text)
        val keep = views().filterIsInstance<TextView>().first { it.contentDescription == "Keep: $field" }
        touch(keep)
    }

    /** No word is cut off by its own view, none hangs over the screen's side, and none is divided without need. */
    private fun nothingCut(name: String) {
        for (view in views().filterIsInstance<TextView>()) {
            val layout = view.layout ?: continue
            if (view is EditText || view.text.isEmpty()) continue
            val room = view.height - view.totalPaddingTop - view.totalPaddingBottom
            if (layout.height > room + 2) throw AssertionError("$name: '${view.text}' is cut: ${layout.height} in $room")
            val wide = view.width - view.totalPaddingLeft - view.totalPaddingRight
            val line = (0 until layout.lineCount).maxOf(layout::getLineMax)
            if (line > wide + 2 && view.typeface != android.graphics.Typeface.MONOSPACE) {
                throw AssertionError("$name: '${view.text}' is cut: $line in $wide")
            }
            // No word is divided that the screen has room for.
            for (at in (1 until layout.lineCount).map(layout::getLineStart)) {
                if (!view.text[at - 1].isLetterOrDigit()) continue
                val word = view.text.take(at).takeLastWhile { it != ' ' }.toString() + view.text.drop(at).takeWhile { it != ' ' }
                if (view.paint.measureText(word) < root.width - view.resources.displayMetrics.density * SIDES) {
                    throw AssertionError("$name: '$word' in '${view.text}' is broken")
                }
            }
        }
    }

    fun picture(name: String) {
        settle()
        nothingCut(name)
        val view = root
        val bitmap = Bitmap.createBitmap(view.width, view.height, Bitmap.Config.ARGB_8888)
        view.draw(Canvas(bitmap))
        save(name, bitmap)
    }

    fun save(name: String, bitmap: Bitmap) {
        val folder = File(System.getProperty("barwright.screens")!!).apply { mkdirs() }
        FileOutputStream(File(folder, "$name.png")).use { bitmap.compress(Bitmap.CompressFormat.PNG, 100, it) }
    }
}

/** What the screen's sides and a key's own take of its width, in dp. */
private const val SIDES = 80
