package barwright.android

import android.content.Context

/** What this phone was told, and what was said to it once. No fact of training is here. */
class Said(context: Context) {
    private val kept = context.getSharedPreferences("phone", Context.MODE_PRIVATE)

    var speaks: Boolean by Flag("speaks")
    var overKeyguard: Boolean by Flag("over keyguard")

    /** Whether a word was never said before; from now on it was. */
    fun first(word: String): Boolean {
        val first = !kept.getBoolean("said $word", false)
        if (first) kept.edit().putBoolean("said $word", true).apply()
        return first
    }

    private inner class Flag(private val name: String) {
        operator fun getValue(of: Said, property: kotlin.reflect.KProperty<*>) =
            kept.getBoolean(name, false)

        operator fun setValue(of: Said, property: kotlin.reflect.KProperty<*>, on: Boolean) =
            kept.edit().putBoolean(name, on).apply()
    }
}
