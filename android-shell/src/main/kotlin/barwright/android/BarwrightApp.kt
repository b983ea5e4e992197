package barwright.android

import android.app.Application
import android.content.Context
import android.content.res.Configuration
import barwright.android.rest.Ring
import barwright.core.Engine
import java.io.File

/** The process: one core, one clock, one ring. */
class BarwrightApp : Application() {
    var clocks: Clocks = DeviceClocks(this)
    lateinit var core: CoreThread
        private set
    lateinit var effects: Effects
        private set
    lateinit var said: Said
        private set

    /** The tag of the language that the core speaks. */
    var language = ""
        private set

    override fun onCreate() {
        super.onCreate()
        said = Said(this)
        language = tag(resources.configuration)
        begin()
    }

    override fun onConfigurationChanged(newConfig: Configuration) {
        super.onConfigurationChanged(newConfig)
        val now = tag(newConfig)
        if (now != language) {
            language = now
            core.reopen()
        }
    }

    /** What the process starts with; a test ends the process by quitting and beginning again. */
    fun begin() {
        effects = Effects(this, Ring(this))
        core = CoreThread({ clocks.read() }, effects::carryOut) {
            records.parentFile?.mkdirs()
            Engine.open(records.path, language)
        }
    }

    /** The one file of the core. The rules for backups name its folder. */
    val records: File get() = File(filesDir, "store/barwright.db")

    private fun tag(configuration: Configuration) = configuration.locales[0].toLanguageTag()
}

val Context.app: BarwrightApp get() = applicationContext as BarwrightApp
