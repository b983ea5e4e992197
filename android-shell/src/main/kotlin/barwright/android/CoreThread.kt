package barwright.android

import android.os.Handler
import android.os.HandlerThread
import android.os.Looper
import barwright.core.Effect
import barwright.core.Engine
import barwright.core.EngineException
import barwright.core.Intent
import barwright.core.Look
import barwright.core.Screen

/** What the core answers. */
sealed interface Answer {
    /** The screen to show; what the device was to do is under way. */
    data class Shown(val screen: Screen) : Answer

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

    fun dispatch(intent: Intent, elsewhere: Boolean = false, then: (Answer) -> Unit) {
        val reading = clocks.read()
        background.post {
            try {
                val update = engine().dispatch(intent, reading)
                main.post {
                    carryOut(update.effects)
                    then(Answer.Shown(update.screen))
                    if (elsewhere) onElsewhere?.invoke()
                }
            } catch (why: EngineException) {
                main.post { then(Answer.Not(why)) }
            }
        }
    }

    fun view(look: Look, then: (Answer) -> Unit) {
        val reading = clocks.read()
        background.post {
            val answer = try {
                Answer.Shown(engine().view(look, reading))
            } catch (why: EngineException) {
                Answer.Not(why)
            }
            main.post { then(answer) }
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
