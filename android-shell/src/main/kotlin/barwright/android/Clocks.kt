package barwright.android

import android.content.Context
import android.os.SystemClock
import android.provider.Settings
import barwright.core.Reading
import java.time.Instant
import java.time.ZoneId
import java.util.concurrent.TimeUnit

/** Where a reading of the time comes from. */
fun interface Clocks {
    fun read(): Reading
}

/** The device's own: wall time with its offset, time since boot counting sleep, and which boot it is. */
class DeviceClocks(private val context: Context) : Clocks {
    override fun read(): Reading {
        val now = Instant.now()
        val ahead = ZoneId.systemDefault().rules.getOffset(now).totalSeconds.toLong()
        val boot = Settings.Global.getInt(context.contentResolver, Settings.Global.BOOT_COUNT, -1)
        return Reading(
            wallMs = now.toEpochMilli(),
            offsetMinutes = TimeUnit.SECONDS.toMinutes(ahead).toInt(),
            bootMs = SystemClock.elapsedRealtime(),
            // A device that doesn't count its starts has none to tell apart: the wall clock rules.
            bootId = if (boot < 0) null else "boot $boot",
        )
    }
}
