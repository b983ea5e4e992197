package barwright.android.rest

import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent as Call
import android.os.Bundle
import barwright.android.Answer
import barwright.android.app
import barwright.android.screen.Places
import barwright.core.Action
import barwright.core.EngineException
import barwright.core.FloorScreen
import barwright.core.Intent
import barwright.core.Key
import barwright.core.Screen

/** The alarm of a rest. */
class RingReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, call: Call) {
        val held = goAsync()
        context.app.effects.ring.soon(call.extras ?: Bundle()) { held?.finish() }
    }
}

/** A key of the notification: records, and stays where the lifter is. */
class NoticeReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, call: Call) {
        val held = goAsync()
        val app = context.app
        val id = call.getStringExtra(KEY)
        val part = call.getStringExtra(PART)
        app.core.view(Places.FLOOR) { answer ->
            val floor = ((answer as? Answer.Shown)?.screen as? Screen.Floor)?.floor
            // A notification that is behind finds another part on the floor: its key is not there.
            val key = floor?.takeIf { it.part == part }?.let(::keys)?.find { it.id == id }
            when (val action = key?.action) {
                is Action.Do -> app.core.act(action, elsewhere = true) { done ->
                    val refused = (done as? Answer.Not)?.why as? EngineException.Refused
                    if (refused != null) app.effects.ring.refused(refused.reason)
                    held?.finish()
                }
                is Action.Show, null -> {
                    app.core.dispatch(Intent.Wake, elsewhere = true) { held?.finish() }
                }
            }
        }
    }

    private fun keys(floor: FloorScreen): List<Key> = with(floor) {
        listOfNotNull(thumb.main) + thumb.beside + listOfNotNull(rest?.longer)
    }

    companion object {
        const val KEY = "key"
        const val PART = "part"
    }
}

/** The device started, its clocks moved, or alarms were allowed: the core looks at the time. */
class WakeReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, call: Call) {
        val held = goAsync()
        context.app.core.dispatch(Intent.Wake, elsewhere = true) { held?.finish() }
    }
}
