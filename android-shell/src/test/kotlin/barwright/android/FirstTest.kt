package barwright.android

import org.junit.Assert.assertTrue
import org.junit.Test

class FirstTest : PhoneTest() {
    @Test
    fun opens() {
        start()
        println(texts())
        picture("first")
        prepare()
        recreate()
        println(texts())
        picture("today")
        tap("Begin")
        println(texts())
        picture("floor")
        assertTrue(sees("Box jump"))
    }
}
