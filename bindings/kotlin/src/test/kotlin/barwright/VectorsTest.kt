package barwright

import barwright.core.Engine
import barwright.core.EngineException
import barwright.testing.Ask
import barwright.testing.answerToJson
import barwright.testing.errorToJson
import barwright.testing.scriptedSession
import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.junit.runners.Parameterized
import java.io.File

/** Every scripted session of `tests/vectors`, on disk: whole answers are compared. */
@RunWith(Parameterized::class)
class VectorsTest(private val name: String, private val file: File) {
    companion object {
        @JvmStatic
        @Parameterized.Parameters(name = "{0}")
        fun scripts(): List<Array<Any>> {
            val folder = File(System.getProperty("barwright.vectors"))
            val scripts = folder.walk().filter { it.extension == "json" }.sorted().toList()
            check(scripts.isNotEmpty()) { "no scripts in $folder" }
            return scripts.map { arrayOf(it.relativeTo(folder).path, it) }
        }
    }

    @Test
    fun `is answered as written`() {
        val session = scriptedSession(file.readText())
        val path = freshPath()
        var engine = Engine.open(path, session.locale)
        for (step in session.steps) {
            val answer = try {
                when (val ask = step.ask) {
                    is Ask.Dispatch -> answerToJson(engine.dispatch(ask.intent, ask.reading))
                    is Ask.Act -> answerToJson(engine.act(ask.action, ask.reading))
                    is Ask.View -> answerToJson(engine.view(ask.look, ask.reading))
                    Ask.Suspend -> { engine.suspend(); "" }
                    Ask.Kill -> {
                        engine.close()
                        engine = Engine.open(path, session.locale)
                        ""
                    }
                }
            } catch (error: EngineException) {
                errorToJson(error)
            }
            assertEquals("$name, step “${step.name}”", step.expected, answer)
        }
        engine.shutDown()
    }
}
