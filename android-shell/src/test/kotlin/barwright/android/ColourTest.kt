package barwright.android

import android.graphics.Color
import barwright.android.view.Style
import org.junit.Assert.assertTrue
import org.junit.Test
import org.robolectric.RuntimeEnvironment

/** Contrast by the formula of WCAG 2: 7 to 1 for what is read at a distance, 4.5 to 1 elsewhere. */
class ColourTest : PhoneTest() {
    private fun contrast(one: Int, other: Int): Double {
        val (light, dark) = listOf(one, other).map { Color.luminance(it).toDouble() }.sortedDescending()
        return (light + 0.05) / (dark + 0.05)
    }

    private fun check() {
        val style = Style(app)
        assertTrue(contrast(style.ink, style.ground) >= 7)
        assertTrue(contrast(style.onBrass, style.brass) >= 7)
        assertTrue(contrast(style.quiet, style.ground) >= 4.5)
        assertTrue("${contrast(style.warn, style.ground)}", contrast(style.warn, style.ground) >= 4.5)
        // Edges and drawings: 3 to 1.
        for (line in listOf(style.outline, style.steel)) {
            assertTrue("${Integer.toHexString(line)} ${contrast(line, style.ground)}", contrast(line, style.ground) >= 3)
        }
    }

    @Test
    fun dark() = check()

    @Test
    fun light() {
        RuntimeEnvironment.setQualifiers("+notnight")
        check()
    }
}
