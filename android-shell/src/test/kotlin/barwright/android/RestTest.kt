package barwright.android

import android.app.AlarmManager
import android.app.NotificationManager
import android.content.Intent as Call
import android.os.Vibrator
import android.view.WindowManager
import barwright.android.rest.Notices
import barwright.core.Look
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Test
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadows.ShadowAlarmManager

/** What goes on while a rest runs: the alarm, the notification, restarts and clocks. */
class RestTest : FloorTest() {
    private val alarms get() = shadowOf(app.getSystemService(AlarmManager::class.java))
    private val notices get() = shadowOf(app.getSystemService(NotificationManager::class.java))

    private fun rest() {
        ShadowAlarmManager.setCanScheduleExactAlarms(true)
        prepare()
        start()
        tap("Begin")
        tap(wide)
        settle()
    }

    @Test
    fun theAlarmIsSetOnTheBootClockJustBeforeTheFirstMark() {
        rest()
        val alarm = alarms.scheduledAlarms.single()
        assertEquals(AlarmManager.ELAPSED_REALTIME_WAKEUP, alarm.type)
        assertEquals(clocks.bootMs!! + 60_000 - 3_500, alarm.triggerAtMs)
        assertTrue(alarm.isAllowWhileIdle)
    }

    @Test
    fun aRestOnTheLockScreenCountsByThePlatformAndIsRecordedThere() {
        rest()
        leave()
        val notice = notices.getNotification(Notices.ID)
        assertTrue(notice.extras.getBoolean("android.chronometerCountDown"))
        assertEquals(clocks.wallMs + 60_000, notice.`when`)
        assertEquals(listOf("Done", "+20 s"), notice.actions.map { it.title.toString() })
        val before = floor.part
        notice.actions[0].actionIntent.send()
        settle()
        assertFalse(before == floor.part)
        // The old notification is behind now: its key records nothing on the next set.
        val now = floor.part
        notice.actions[0].actionIntent.send()
        settle()
        assertEquals(now, floor.part)
    }

    @Test
    fun theAlarmRingsAndTheEndIsSaid() {
        rest()
        leave()
        clocks.pass(56_500)
        alarms.fireAlarm(alarms.scheduledAlarms.single())
        settle()
        pass(4)
        val notice = notices.getNotification(Notices.ID)
        assertEquals(Notices.OVER, notice.channelId)
        assertEquals("Rest over.", notice.extras.getString("android.title"))
    }

    @Test
    fun recordingTheNextSetCancelsTheRing() {
        rest()
        tap("Undo")
        assertTrue(alarms.scheduledAlarms.isEmpty())
        assertNull(notices.getNotification(Notices.ID))
    }

    @Test
    fun aRestartSaysSoLosesNothingAndSetsTheAlarmAgain() {
        rest()
        val saved = die()
        clocks.wallMs += 20_000
        clocks.bootMs = 9_000
        clocks.bootId = "boot 8"
        broadcast(Call.ACTION_BOOT_COMPLETED)
        start(saved = saved)
        assertTrue(texts().toString(), sees("0:40") && sees("restarted"))
        assertEquals(1, alarms.scheduledAlarms.size)
        assertTrue(floor.rest!!.leftMs in 39_000..40_000)
    }

    @Test
    fun aClockSetForwardEndsNoRestEarly() {
        rest()
        clocks.wallMs += 3_600_000
        broadcast(Call.ACTION_TIME_CHANGED)
        assertEquals(60_000L, floor.rest!!.leftMs)
    }

    @Test
    fun withoutPermissionsItWorksAndSaysOnceWhatIsLost() {
        ShadowAlarmManager.setCanScheduleExactAlarms(false)
        notices.setNotificationsEnabled(false)
        prepare()
        start()
        tap("Begin")
        tap(wide)
        assertTrue(texts().toString(), sees("notifications must be allowed"))
        tap("Not now")
        pass(2)
        assertTrue(texts().toString(), sees("Notifications are off"))
        tap("Understood")
        pass(2)
        assertTrue(texts().toString(), sees("Exact alarms are off"))
        tap("Understood")
        pass(2)
        tap(wide)
        assertTrue(floor.rest != null)
        assertFalse(sees("off:"))
    }

    @Test
    fun anotherZoneChangesNothingOfARest() {
        rest()
        pass(20)
        clocks.offsetMinutes = -300
        broadcast(Call.ACTION_TIMEZONE_CHANGED)
        assertEquals(40_000L, floor.rest!!.leftMs)
        assertEquals(clocks.bootMs!! + 40_000 - 3_500, alarms.scheduledAlarms.single().triggerAtMs)
    }

    @Test
    fun whereThereIsNoBootClockTheWallClockRings() {
        clocks.bootMs = null
        clocks.bootId = null
        rest()
        val alarm = alarms.scheduledAlarms.single()
        assertEquals(AlarmManager.RTC_WAKEUP, alarm.type)
        assertEquals(clocks.wallMs + 60_000 - 3_500, alarm.triggerAtMs)
    }

    @Test
    fun longerOnTheLockScreenMovesTheAlarmAndOpensNothing() {
        rest()
        leave()
        val before = floor.part
        notices.getNotification(Notices.ID).actions.last().actionIntent.send()
        settle()
        assertNull(shadowOf(app).nextStartedActivity)
        assertEquals(before, floor.part)
        assertEquals(clocks.bootMs!! + 80_000 - 3_500, alarms.scheduledAlarms.single().triggerAtMs)
        assertEquals(clocks.wallMs + 80_000, notices.getNotification(Notices.ID).`when`)
    }

    @Test
    fun aKeyOfTheNotificationWorksInAProcessThatJustBegan() {
        rest()
        val notice = notices.getNotification(Notices.ID)
        val before = floor.part
        die()
        notice.actions[0].actionIntent.send()
        settle()
        assertFalse(before == floor.part)
        assertEquals(1, alarms.scheduledAlarms.size)
        assertNull(shadowOf(app).nextStartedActivity)
    }

    @Test
    fun withoutExactAlarmsTheProcessRingsOnTimeAndTheLateAlarmIsTakenBack() {
        ShadowAlarmManager.setCanScheduleExactAlarms(false)
        prepare()
        start()
        tap("Begin")
        tap(wide)
        assertEquals(1, alarms.scheduledAlarms.size)
        leave()
        val vibrator = shadowOf(app.getSystemService(Vibrator::class.java))
        repeat(61) { pass(1) }
        assertEquals(400L, vibrator.milliseconds)
        assertEquals("Rest over.", notices.getNotification(Notices.ID).extras.getString("android.title"))
        assertTrue(alarms.scheduledAlarms.isEmpty())
    }

    @Test
    fun onceExactAlarmsAreAllowedTheRunningRestGetsOne() {
        ShadowAlarmManager.setCanScheduleExactAlarms(false)
        prepare()
        start()
        tap("Begin")
        tap(wide)
        ShadowAlarmManager.setCanScheduleExactAlarms(true)
        broadcast(AlarmManager.ACTION_SCHEDULE_EXACT_ALARM_PERMISSION_STATE_CHANGED)
        val alarm = alarms.scheduledAlarms.single()
        assertEquals(clocks.bootMs!! + 60_000 - 3_500, alarm.triggerAtMs)
        assertEquals("exact", 0L, alarm.windowLengthMs)
    }

    @Test
    fun allowedNotificationsShowTheRestThatRuns() {
        ShadowAlarmManager.setCanScheduleExactAlarms(true)
        notices.setNotificationsEnabled(false)
        prepare()
        start()
        tap("Begin")
        tap(wide)
        tap("Allow")
        notices.setNotificationsEnabled(true)
        app.getSystemService(NotificationManager::class.java).cancelAll()
        activity.onRequestPermissionsResult(3, arrayOf("android.permission.POST_NOTIFICATIONS"), intArrayOf(0))
        settle()
        assertNotNull(notices.getNotification(Notices.ID))
        assertFalse(sees("Notifications are off"))
    }

    @Test
    fun overTheKeyguardOnlyWhenTheUserAllowsItAndASessionRuns() {
        prepare()
        start()
        tap("Go to…")
        tap("Show the floor over the lock screen")
        assertFalse(shadowOf(activity).showWhenLocked)
        tap("Today")
        tap("Begin")
        assertTrue(shadowOf(activity).showWhenLocked)
        tap("Go to…")
        tap("✓ Show the floor over the lock screen")
        assertFalse(shadowOf(activity).showWhenLocked)
    }

    @Test
    fun theScreenStaysOnWhileASessionRuns() {
        prepare()
        start()
        val flag = WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON
        assertEquals(0, activity.window.attributes.flags and flag)
        tap("Begin")
        assertEquals(flag, activity.window.attributes.flags and flag)
        tap("More…")
        tap("Pause")
        assertEquals(0, activity.window.attributes.flags and flag)
    }

    @Test
    fun whatIsEnteredOutlivesTheProcess() {
        prepare()
        start()
        activity.go(Look.Today("1.2", null))
        settle()
        tap("Begin")
        tap("More…")
        val saved = die()
        start(saved = saved)
        assertTrue(texts().toString(), hasKey("Skip this set"))
        assertNotNull(floor)
    }
}
