package barwright.android

import android.content.Context
import android.content.Intent as Call
import android.os.VibrationEffect
import android.os.Vibrator
import android.speech.tts.TextToSpeech
import barwright.android.rest.Ring
import barwright.core.Effect
import barwright.core.HapticKind
import java.io.File

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
        is Effect.Speak -> if (app.said.speaks) speak(effect.text) else Unit
        is Effect.KeepAwake -> {
            awake = effect.on
            onAwake?.invoke(effect.on) ?: Unit
        }
        is Effect.ShareFile -> share(effect)
    }

    fun speak(text: String) = (voice ?: Voice(app).also { voice = it }).say(text)

    private fun felt(kind: HapticKind) {
        val mark = when (kind) {
            HapticKind.RECORDED -> VibrationEffect.createOneShot(35, VibrationEffect.DEFAULT_AMPLITUDE)
            HapticKind.CHANGED -> VibrationEffect.createWaveform(longArrayOf(0, 20, 60, 20), -1)
        }
        app.getSystemService(Vibrator::class.java)?.vibrate(mark)
    }

    /** What the core wrote is shared from the one folder that is handed out. */
    private fun share(effect: Effect.ShareFile) = app.core.off({
        val file = File(effect.path)
        file.copyTo(File(SharedFiles.folder(app), file.name), overwrite = true)
    }) { app.startActivity(SharedFiles.sheet(it, effect.mediaType).addFlags(Call.FLAG_ACTIVITY_NEW_TASK)) }
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
