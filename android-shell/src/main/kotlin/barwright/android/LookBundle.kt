package barwright.android

import android.os.Bundle
import barwright.core.Draft
import barwright.core.FormOf
import barwright.core.LayAnew
import barwright.core.Look

/** A look in a saved state and back, so that a screen outlives the process. */
object LookBundle {
    fun of(look: Look): Bundle = Bundle().apply {
        when (look) {
            is Look.Today -> {
                putString("look", "today")
                putString("session", look.session)
                number("minutes", look.minutes)
            }
            is Look.Floor -> {
                putString("look", "floor")
                number("amount", look.draft.amount)
                putString("load", look.draft.load)
                number("helped", look.draft.helped)
                putString("correct", look.draft.correct)
                putString("panel", look.draft.panel)
            }
            is Look.Tally -> putString("look", "tally")
            is Look.Weeks -> putString("look", "weeks")
            is Look.Anew -> {
                putString("look", "anew")
                putString("how", look.how.name)
            }
            is Look.Lift -> {
                putString("look", "lift")
                putString("exercise", look.exercise)
                number("page", look.page)
            }
            is Look.Balance -> {
                putString("look", "balance")
                number("weeks", look.weeks)
            }
            is Look.Equipment -> putString("look", "equipment")
            is Look.Care -> putString("look", "care")
            is Look.Form -> {
                putString("look", "form")
                putString("of", look.of.name)
                putString("at", look.at)
                putString("text", look.text.takeIf { it.length <= MOST_TEXT } ?: "")
            }
            is Look.Plan -> {
                putString("look", "plan")
                // A saved state has little room; a longer file has to be opened again.
                putString("text", look.text?.takeIf { it.length <= MOST_TEXT })
                number("week", look.week)
            }
        }
    }

    fun read(from: Bundle): Look? = when (from.getString("look")) {
        "today" -> Look.Today(from.getString("session"), from.number("minutes"))
        "floor" -> Look.Floor(
            Draft(
                amount = from.number("amount"),
                load = from.getString("load"),
                helped = from.number("helped") ?: 0u,
                correct = from.getString("correct"),
                panel = from.getString("panel"),
            ),
        )
        "tally" -> Look.Tally
        "weeks" -> Look.Weeks
        "anew" -> LayAnew.entries.find { it.name == from.getString("how") }?.let { Look.Anew(it) }
        "lift" -> from.getString("exercise")?.let { Look.Lift(it, from.number("page") ?: 0u) }
        "balance" -> Look.Balance(from.number("weeks"))
        "equipment" -> Look.Equipment
        "care" -> Look.Care
        "form" -> FormOf.entries.find { it.name == from.getString("of") }?.let {
            Look.Form(it, from.getString("at") ?: "", from.getString("text") ?: "")
        }
        "plan" -> Look.Plan(from.getString("text"), from.number("week"))
        else -> null
    }

    private fun Bundle.number(name: String, value: UInt?) {
        if (value != null) putInt(name, value.toInt())
    }

    private fun Bundle.number(name: String): UInt? =
        if (containsKey(name)) getInt(name).toUInt() else null

    private const val MOST_TEXT = 100_000
}
