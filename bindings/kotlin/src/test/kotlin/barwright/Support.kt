package barwright

import barwright.core.Engine
import barwright.core.Reading
import java.io.File
import java.nio.file.Files

/** A morning of the off-season, on a device that has been up for an hour. */
fun reading(afterMs: Long = 0) = Reading(
    wallMs = 1_794_297_600_000 + afterMs,
    offsetMinutes = 0,
    bootMs = 3_600_000 + afterMs,
    bootId = "first",
)

/** Where the tests' folders lie: gone with what is in it when the tests are over. */
private val allFolders: File = Files.createTempDirectory("barwright").toFile().also { folder ->
    Runtime.getRuntime().addShutdownHook(Thread { folder.deleteRecursively() })
}

/** A folder of its own for one test. */
fun freshFolder(): File = Files.createTempDirectory(allFolders.toPath(), "test").toFile()

/** A file that is not there yet. */
fun freshPath(): String = File(freshFolder(), "log.db").path

/** An engine on a file of its own, with [PLAN] adopted. */
fun engineWithPlan(path: String = freshPath(), locale: String = "en-GB"): Engine {
    val engine = Engine.open(path, locale)
    engine.dispatch(barwright.core.Intent.AdoptPlan(PLAN), reading())
    return engine
}

/** Two sets of one exercise. */
val PLAN = """
    name = "Erg room"
    weeks = 2

    [[session]]
    name = "Legs"

    [[session.exercise]]
    name = "Back squat"
    sets = 2
    reps = 5
    load = "100 kg"
    left = "1-2"
    rest = "3:00"
    ramp = "none"
""".trimIndent()
