package barwright.android.rest

import android.app.AlarmManager
import android.app.PendingIntent
import android.content.Intent as Call
import android.media.AudioAttributes
import android.media.AudioManager
import android.media.ToneGenerator
import android.os.Build
import android.os.Bundle
import android.os.Handler
import android.os.Looper
import android.os.VibrationEffect
import android.os.Vibrator
import barwright.android.BarwrightApp
import barwright.android.screen.Places
import barwright.core.Effect
import barwright.core.Screen

/**
 * Rings once at a deadline: three short marks before it, one at it.
 *
 * One alarm wakes the device just before the first mark; until then nothing of ours runs. Where
 * exact alarms are not allowed, a late one is set, and the process rings on time if it is alive.
 */
class Ring(private val app: BarwrightApp) {
    private val alarms = app.getSystemService(AlarmManager::class.java)
    private val handler = Handler(Looper.getMainLooper())
    /** Apart, so that a rest that is called off lets every tone go all the same. */
    private val tones = Handler(Looper.getMainLooper())
    private val notices = Notices(app)
    private var ringing: Bundle? = null

    /** Whether an activity of ours is in front: then it shows the end itself. */
    var inFront = false

    /** Whether the device lets us ring on the second with the screen dark. */
    val exact: Boolean
        get() = Build.VERSION.SDK_INT < Build.VERSION_CODES.S || alarms.canScheduleExactAlarms()

    fun at(ring: Effect.RingAt) {
        silence()
        val what = Bundle().apply {
            putLong(WALL, ring.wallMs)
            ring.bootMs?.let { putLong(BOOT, it) }
            putString(TEXT, ring.text)
            putString(NEXT, ring.next)
        }
        set(what)
        if (!exact) handler.postDelayed({ soon(what) }, (left(what) - LEAD_MS).coerceAtLeast(0))
        onFloor { floor -> notices.countdown(floor, ring.wallMs, ring.next) }
    }

    fun cancel() {
        silence()
        alarms.cancel(alarm(Bundle()))
        notices.clear()
    }

    /** The alarm went off: the marks, then the end. `over` is told when all is done. */
    fun soon(what: Bundle, over: () -> Unit = {}) {
        if (ringing != null) return over()
        ringing = what
        val left = left(what)
        for (before in MARKS_MS) {
            if (left >= before) handler.postDelayed({ sound(SHORT_MS) }, left - before)
        }
        handler.postDelayed({
            sound(LONG_MS)
            // For who wants it aloud: that the rest is over, and what comes next.
            if (app.said.speaks) app.effects.speak("${what.getString(TEXT)} ${what.getString(NEXT)}")
            ringing = null
            // Where the process was the first to ring, the late alarm has nothing left to say.
            alarms.cancel(alarm(what))
            if (inFront) notices.clear() else onFloor { notices.over(it, what) }
            over()
        }, left.coerceAtLeast(0))
    }

    /** A notification's key was refused: say why, where it was tapped. */
    fun refused(reason: String) = onFloor { notices.refused(it, reason) }

    private fun onFloor(then: (barwright.core.FloorScreen) -> Unit) =
        app.core.view(Places.FLOOR) { answer ->
            val floor = (answer as? barwright.android.Answer.Shown)?.screen as? Screen.Floor
            if (floor != null) then(floor.floor)
        }

    private fun set(what: Bundle) {
        val boot = if (what.containsKey(BOOT)) what.getLong(BOOT) else null
        val clock = if (boot != null) AlarmManager.ELAPSED_REALTIME_WAKEUP else AlarmManager.RTC_WAKEUP
        val at = (boot ?: what.getLong(WALL)) - LEAD_MS
        if (exact) {
            try {
                alarms.setExactAndAllowWhileIdle(clock, at, alarm(what))
                return
            } catch (_: SecurityException) {
                // Taken away between the question and the call.
            }
        }
        alarms.setAndAllowWhileIdle(clock, at, alarm(what))
    }

    private fun alarm(what: Bundle): PendingIntent = PendingIntent.getBroadcast(
        app,
        0,
        Call(app, RingReceiver::class.java).putExtras(what),
        PendingIntent.FLAG_UPDATE_CURRENT or PendingIntent.FLAG_IMMUTABLE,
    )

    private fun left(what: Bundle): Long {
        val now = app.clocks.read()
        val boot = now.bootMs
        return if (boot != null && what.containsKey(BOOT)) {
            what.getLong(BOOT) - boot
        } else {
            what.getLong(WALL) - now.wallMs
        }
    }

    private fun silence() {
        handler.removeCallbacksAndMessages(null)
        ringing = null
    }

    /** As a notification sounds: a device that is silent stays so. */
    private fun sound(lengthMs: Int) {
        app.getSystemService(Vibrator::class.java)?.vibrate(
            VibrationEffect.createOneShot(lengthMs.toLong(), VibrationEffect.DEFAULT_AMPLITUDE),
            AudioAttributes.Builder().setUsage(AudioAttributes.USAGE_NOTIFICATION).build(),
        )
        try {
            val tone = ToneGenerator(AudioManager.STREAM_NOTIFICATION, VOLUME)
            tone.startTone(ToneGenerator.TONE_PROP_BEEP, lengthMs)
            tones.postDelayed(tone::release, lengthMs + 100L)
        } catch (_: RuntimeException) {
            // No sound to be had from this device now; the mark was felt.
        }
    }

    companion object {
        const val WALL = "wall"
        const val BOOT = "boot"
        const val TEXT = "text"
        const val NEXT = "next"
        const val LEAD_MS = 3_500L
        private val MARKS_MS = listOf(3_000L, 2_000L, 1_000L)
        private const val SHORT_MS = 80
        private const val LONG_MS = 400
        private const val VOLUME = 80
    }
}
