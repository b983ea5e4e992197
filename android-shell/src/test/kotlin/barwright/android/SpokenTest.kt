package barwright.android

import android.view.View
import android.view.accessibility.AccessibilityEvent
import android.view.accessibility.AccessibilityManager
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.EditText
import barwright.android.view.KeyView
import barwright.core.Look
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertTrue
import org.junit.Test
import org.robolectric.Shadows.shadowOf

/** What a screen reader gets to hear. */
class SpokenTest : FloorTest() {
    private val manager get() = shadowOf(app.getSystemService(AccessibilityManager::class.java))

    private var before = 0

    private fun listen() {
        manager.setEnabled(true)
        before = manager.sentAccessibilityEvents.size
    }

    /** What would be said: announcements, and changes of what asked to be followed. */
    private fun heard(): List<AccessibilityEvent> = manager.sentAccessibilityEvents.drop(before).filter {
        it.eventType == AccessibilityEvent.TYPE_ANNOUNCEMENT || it.eventType == AccessibilityEvent.TYPE_WINDOW_CONTENT_CHANGED
    }

    private fun nodes(of: View = root): List<Pair<View, AccessibilityNodeInfo>> =
        views(of).filter { it.isImportantForAccessibility }.map { it to it.createAccessibilityNodeInfo() }.toList()

    private fun everythingIsNamed(where: String) {
        for ((view, node) in nodes()) {
            if (view is EditText) {
                assertFalse("$where: a field without a name", node.contentDescription.isNullOrEmpty())
            } else if (node.isClickable) {
                val words = node.contentDescription ?: node.text
                assertFalse("$where: $view says nothing", words.isNullOrEmpty())
                assertTrue("$where: $words", words.any { it.isLetterOrDigit() })
            }
        }
        assertTrue("$where has no heading", nodes().any { it.second.isHeading })
        assertNotNull(where, nodes().firstNotNullOfOrNull { it.second.paneTitle })
    }

    @Test
    fun everyScreenNamesItsControls() {
        demoStore()
        start()
        for (look in listOf(
            Look.Today(null, null), Look.Weeks, Look.Balance(null), Look.Lift("", 0u), Look.Equipment, Look.Plan(null, 1u),
        )) {
            activity.go(look)
            settle()
            everythingIsNamed(look.toString())
        }
        tap("Go to…")
        everythingIsNamed("places")
        tap("Today")
        tap("Begin")
        recordUntil { it.thumb.effort.isNotEmpty() }
        everythingIsNamed("floor")
        for (panel in listOf("More…", "Set cut short…")) {
            tap(panel)
            everythingIsNamed(panel)
            tap("Back")
        }
        tap("More…")
        tap("Finish the session now")
        everythingIsNamed("tally")
    }

    @Test
    fun aKeySaysWhatItDoesAndWhatLiesBehindIt() {
        begin("1.1")
        recordUntil { it.thumb.effort.isNotEmpty() }
        val key = key("8")
        val node = key.createAccessibilityNodeInfo()
        assertEquals("android.widget.Button", node.className)
        assertTrue(node.contentDescription.toString(), node.contentDescription.length > 3)
        val long = node.actionList.first { it.id == AccessibilityNodeInfo.ACTION_LONG_CLICK }
        assertTrue("${long.label}", long.label.contains("8.5"))
        // Without a touch: the reader's own taps record too.
        val before = floor.part
        key.performAccessibilityAction(AccessibilityNodeInfo.ACTION_CLICK, null)
        settle()
        assertFalse(before == floor.part)
    }

    @Test
    fun theCountdownDoesNotChatterAndItsEndIsSaidOnce() {
        begin("1.1")
        tap(wide)
        listen()
        repeat(50) { pass(1) }
        assertTrue(texts().toString(), sees("0:10"))
        assertEquals(emptyList<String>(), heard().map { "$it" })
        repeat(14) { pass(1) }
        assertTrue(texts().toString(), sees("+0:04"))
        val said = heard().filter { it.eventType == AccessibilityEvent.TYPE_ANNOUNCEMENT }
        assertEquals(said.toString(), 1, said.size)
        // Asked for, it is read: the figures are a node of their own.
        assertTrue(nodes().any { it.second.contentDescription?.contains("+0:04") == true })
    }

    @Test
    fun aRunningHoldDoesNotChatter() {
        beginEveryKind()
        recordUntil { it.call.exercise == "Plank" }
        pass(300)
        tap("Start the hold")
        pass(1)
        listen()
        repeat(8) { pass(1) }
        // The figure is followed only where the lifter steps it.
        val figure = views().filterIsInstance<android.widget.TextView>().first { it.text.toString() == "9 s" }
        assertEquals(View.ACCESSIBILITY_LIVE_REGION_NONE, figure.accessibilityLiveRegion)
        val said = heard().filter { it.eventType == AccessibilityEvent.TYPE_ANNOUNCEMENT }
        assertEquals(emptyList<String>(), said.map { "$it" })
        tap("Done")
        assertEquals(View.ACCESSIBILITY_LIVE_REGION_POLITE, figure.accessibilityLiveRegion)
    }

    @Test
    fun aSteppedFigureIsSaid() {
        begin("1.1")
        listen()
        tap("+")
        assertTrue(heard().any { it.eventType == AccessibilityEvent.TYPE_WINDOW_CONTENT_CHANGED })
    }

    @Test
    fun aRefusalIsSaid() {
        begin("1.1")
        val key: KeyView = key(wide)
        key.performClick()
        listen()
        key.performClick()
        settle()
        assertTrue(sees("recorded already"))
        val words = views().first { it.accessibilityLiveRegion == View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE }
        assertTrue(views(words).filterIsInstance<android.widget.TextView>().any { "recorded already" in it.text })
    }

    @Test
    fun aScreenIsReadAloudWholeWhenAsked() {
        prepare()
        start()
        tap("Go to…")
        tap("Read this screen aloud")
        val speech = org.robolectric.shadows.ShadowTextToSpeech.getLastTextToSpeechInstance()
        shadowOf(speech).onInitListener.onInit(android.speech.tts.TextToSpeech.SUCCESS)
        val words = shadowOf(speech).lastSpokenText
        assertTrue(words, words.contains("Back squat"))
    }
}
