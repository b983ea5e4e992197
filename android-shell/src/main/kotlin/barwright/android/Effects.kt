package barwright.android

import android.content.Context
import android.os.VibrationEffect
import android.os.Vibrator
import android.speech.tts.TextToSpeech
import barwright.android.rest.Ring
import barwright.core.Effect
import barwright.core.HapticKind

/** Carries out what the core asks of the device. */
class Effects(private val app: BarwrightApp, val ring: Ring) {
    /** Whether the screen is to stay on; the activity in front follows it. */
    var awake = false
        private set
    var onAwake: ((Boolean) -> Unit)? = null
    private var voice: Voice? = null

    fun carryOut(effects: List<Effect>) = effects.forEach(::carryOut)

    private fun carryOut(effect: Effect): Unit = when (effect) {
        is Effect.RingAt -> ring.at(effect)
        is Effect.CancelRing -> ring.cancel()
        is Effect.Haptic -> felt(effect.kind)
        is Effect.KeepAwake -> {
            awake = effect.on
            onAwake?.invoke(effect.on) ?: Unit
        }
    }

    fun speak(text: String) = (voice ?: Voice(app).also { voice = it }).say(text)

    private fun felt(kind: HapticKind) {
        val mark = when (kind) {
            HapticKind.RECORDED -> VibrationEffect.createOneShot(35, VibrationEffect.DEFAULT_AMPLITUDE)
            HapticKind.CHANGED -> VibrationEffect.createWaveform(longArrayOf(0, 20, 60, 20), -1)
        }
        app.getSystemService(Vibrator::class.java)?.vibrate(mark)
    }
}

/** The device's voice, started when the first words are to be spoken. */
private class Voice(context: Context) {
    private var waiting: String? = null
    private var ready = false
    private val speech: TextToSpeech = TextToSpeech(context) { status ->
        ready = status == TextToSpeech.SUCCESS
        if (ready) waiting?.let(::say)
        waiting = null
    }

    fun say(text: String) {
        if (ready) speech.speak(text, TextToSpeech.QUEUE_FLUSH, null, "said") else waiting = text
    }
}
