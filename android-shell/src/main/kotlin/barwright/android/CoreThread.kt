package barwright.android

import android.os.Handler
import android.os.HandlerThread
import android.os.Looper
import barwright.core.Action
import barwright.core.Effect
import barwright.core.Engine
import barwright.core.EngineException
import barwright.core.Intent
import barwright.core.Look
import barwright.core.Screen

/** What the core answers. */
sealed interface Answer {
    /**
     * The screen to show, what it is of, and milliseconds until it changes by itself; what the device
     * was to do is under way.
     */
    data class Shown(val look: Look, val screen: Screen, val wakesIn: Long?) : Answer

    /** Nothing was recorded. */
    data class Not(val why: EngineException) : Answer
}

/**
 * The one engine of the process, behind one thread: calls are taken in order, answers come back on
 * the main thread. Opens the store at the first call.
 */
class CoreThread(
    private val clocks: Clocks,
    private val carryOut: (List<Effect>) -> Unit,
    private val open: () -> Engine,
) {
    private val thread = HandlerThread("core").apply { start() }
    private val background = Handler(thread.looper)
    private val main = Handler(Looper.getMainLooper())
    private var engine: Engine? = null

    /** Told of a tap that came from elsewhere: a notification, a receiver. */
    var onElsewhere: (() -> Unit)? = null

    val looper: Looper get() = thread.looper

    /** What a key says. */
    fun act(action: Action, elsewhere: Boolean = false, then: (Answer) -> Unit) {
        val reading = clocks.read()
        ask({ it.act(action, reading) }, { then(Answer.Not(it)) }) { answer ->
            carryOut(answer.effects)
            then(Answer.Shown(answer.look, answer.screen, answer.wakesAt?.minus(reading.wallMs)))
            if (elsewhere) onElsewhere?.invoke()
        }
    }

    fun dispatch(intent: Intent, elsewhere: Boolean = false, then: (Answer) -> Unit) =
        act(Action.Do(intent), elsewhere, then)

    fun view(look: Look, then: (Answer) -> Unit) = act(Action.Show(look), then = then)

    /** Anything else that the engine answers. */
    fun <T> ask(work: (Engine) -> T, not: (EngineException) -> Unit, then: (T) -> Unit) =
        attempt({ work(engine()) }, not, then)

    /** Work on the store's file, which no engine may have open meanwhile. */
    fun <T> without(work: () -> T, not: (EngineException) -> Unit, then: (T) -> Unit) = attempt(
        {
            release()
            work()
        },
        not,
        then,
    )

    private fun <T> attempt(work: () -> T, not: (EngineException) -> Unit, then: (T) -> Unit) {
        background.post {
            try {
                val done = work()
                main.post { then(done) }
            } catch (why: EngineException) {
                main.post { not(why) }
            }
        }
    }

    /** Other work off the main thread: reading a file that was handed over. */
    fun <T> off(work: () -> T, then: (T) -> Unit) {
        background.post {
            val done = work()
            main.post { then(done) }
        }
    }

    /** The program left the screen: give the file up until the next call. */
    fun suspend() {
        background.post {
            // What was acknowledged is safe; the next call says what is wrong with the disk.
            try {
                engine?.suspend()
            } catch (_: EngineException) {
            }
        }
    }

    /** The device's language or region changed: the next call opens with the new one. */
    fun reopen() {
        background.post { release() }
    }

    /** Ends the thread, when a test ends the process. */
    fun quit() {
        background.post { release() }
        thread.quitSafely()
    }

    private fun release() {
        try {
            engine?.shutDown()
        } catch (_: EngineException) {
        }
        engine = null
    }

    private fun engine(): Engine = engine ?: open().also { engine = it }
}
