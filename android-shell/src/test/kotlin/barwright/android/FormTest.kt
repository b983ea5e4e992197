package barwright.android

import android.view.View
import android.widget.EditText
import barwright.android.view.KeyView
import barwright.core.FormOf
import barwright.core.Look
import barwright.core.Screen
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test

/** What is made by hand, by touch. */
class FormTest : PhoneTest() {
    private fun show(look: Look) {
        activity.go(look)
        settle()
    }

    /** A key by what it says aloud, since many say "+". */
    private fun says(words: String): KeyView =
        keys().firstOrNull { it.contentDescription == words }
            ?: throw AssertionError("no key says '$words': ${keys().map { it.contentDescription }}")

    @Test
    fun aGymIsMadeByTouchOutlivesTheProcessAndIsUsed() {
        start()
        show(Look.Equipment)
        tap("New gym, empty, kg")
        assertTrue(texts().toString(), sees("Gym: My gym"))
        tap("Long bar")
        assertTrue(sees("20 kg and nothing else"))
        tap("A small set")
        assertTrue(texts().toString(), sees("20 kg to 167.5 kg, every 2.5 kg"))
        touch(says("2.5 kg: more"))
        assertTrue(sees("2 pairs"))
        picture("form-gym")
        val saved = die()
        start(saved = saved)
        assertTrue(texts().toString(), sees("20 kg to 172.5 kg"))
        tap("Undo")
        assertTrue(sees("20 kg to 167.5 kg"))
        // A field opens when it is asked for.
        assertFalse(views().any { it is EditText })
        touch(says("Type Name"))
        type("Name", "Garage")
        assertTrue(texts().toString(), sees("Gym: Garage"))
        tap("Use it")
        assertTrue((ask(Look.Equipment) as Screen.Equipment).equipment.title == "Garage")
    }

    @Test
    fun aMaxIsChangedWithItsLoadsShownFirst() {
        prepare()
        start()
        show(Look.Form(FormOf.MAXES, "", ""))
        assertTrue(sees("97.5 kg"))
        touch(says("Bench press: 5 percent less; nothing counts yet"))
        assertTrue(texts().toString(), sees("92.5 kg, was 97.5 kg"))
        assertTrue(texts().any { it.startsWith("Week 1") })
        picture("form-maxes")
        tap("Take 92.5 kg")
        tap("Undo")
        assertTrue(sees("97.5 kg"))
    }

    @Test
    fun exercisesAreLookedFor() {
        start()
        show(Look.Form(FormOf.EXERCISES, "", ""))
        touch(says("Type Look for"))
        type("Look for", "front squat")
        assertTrue(texts().toString(), sees("Front squat"))
        assertFalse(sees("Plank"))
        picture("form-exercises")
    }

    @Test
    fun whatIsWrongStandsBesideItsRow() {
        start()
        show(Look.Equipment)
        tap("New gym, full, kg")
        touch(says("Type 25 kg"))
        type("Pairs of 25 kg", "many")
        assertTrue(texts().toString(), sees("thing to put right"))
        val use: View = key("Use it")
        assertFalse(use.isEnabled)
        picture("form-faults")
    }

    @Test
    fun aFormOutlivesTheProcess() {
        val look = Look.Form(FormOf.GYM, "bar.0", "a")
        assertEquals(look, LookBundle.read(LookBundle.of(look)))
    }
}
