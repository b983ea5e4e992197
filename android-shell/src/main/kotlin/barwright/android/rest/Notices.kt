package barwright.android.rest

import android.app.Notification
import android.app.NotificationChannel
import android.app.NotificationManager
import android.app.PendingIntent
import android.content.Intent as Call
import android.os.Bundle
import barwright.android.BarwrightApp
import barwright.android.MainActivity
import barwright.android.R
import barwright.core.Action
import barwright.core.FloorScreen
import barwright.core.Key

/** One notification: a rest that counts down, then that it is over. The platform does the counting. */
internal class Notices(private val app: BarwrightApp) {
    private val manager = app.getSystemService(NotificationManager::class.java)

    fun countdown(floor: FloorScreen, deadlineWallMs: Long, next: String) {
        val rest = floor.rest ?: return
        show(
            builder(COUNTDOWN, floor, deadlineWallMs)
                .setContentTitle(rest.label)
                .setContentText(next)
                .setChronometerCountDown(true)
                .setOngoing(true)
                .build(),
        )
    }

    fun over(floor: FloorScreen, what: Bundle) = show(
        builder(OVER, floor, what.getLong(Ring.WALL))
            .setContentTitle(what.getString(Ring.TEXT))
            .setContentText(what.getString(Ring.NEXT))
            .setCategory(Notification.CATEGORY_ALARM)
            .build(),
    )

    fun refused(floor: FloorScreen, reason: String) {
        val rest = floor.rest ?: return clear()
        show(
            builder(COUNTDOWN, floor, rest.deadlineWallMs)
                .setContentTitle(reason)
                .setStyle(Notification.BigTextStyle().bigText(reason))
                .setChronometerCountDown(!rest.over)
                .build(),
        )
    }

    fun clear() = manager.cancel(ID)

    private fun builder(channel: String, floor: FloorScreen, whenMs: Long): Notification.Builder {
        val builder = Notification.Builder(app, channel)
            .setSmallIcon(R.drawable.ic_notice)
            .setColor(app.getColor(R.color.brass))
            .setWhen(whenMs)
            .setShowWhen(true)
            .setUsesChronometer(true)
            .setOnlyAlertOnce(channel == COUNTDOWN)
            .setVisibility(Notification.VISIBILITY_PUBLIC)
            .setContentIntent(opens())
        keys(floor).forEachIndexed { at, key ->
            builder.addAction(Notification.Action.Builder(null, key.label, taps(at, floor, key)).build())
        }
        return builder
    }

    /** The keys that record, in the floor's own order, then longer; there is room for three. */
    private fun keys(floor: FloorScreen): List<Key> {
        val thumb = floor.thumb
        return (listOfNotNull(thumb.main) + thumb.beside + listOfNotNull(floor.rest?.longer))
            .filter { it.enabled && it.action is Action.Do }
            .take(3)
    }

    private fun opens() = PendingIntent.getActivity(
        app,
        0,
        Call(app, MainActivity::class.java).addFlags(Call.FLAG_ACTIVITY_NEW_TASK),
        PendingIntent.FLAG_UPDATE_CURRENT or PendingIntent.FLAG_IMMUTABLE,
    )

    /** The key by its name and the part it was shown for: a process that died meanwhile finds it. */
    private fun taps(at: Int, floor: FloorScreen, key: Key) = PendingIntent.getBroadcast(
        app,
        at,
        Call(app, NoticeReceiver::class.java)
            .putExtra(NoticeReceiver.KEY, key.id)
            .putExtra(NoticeReceiver.PART, floor.part),
        PendingIntent.FLAG_UPDATE_CURRENT or PendingIntent.FLAG_IMMUTABLE,
    )

    private fun show(notification: Notification) {
        manager.createNotificationChannel(
            NotificationChannel(COUNTDOWN, app.getString(R.string.rest_channel), NotificationManager.IMPORTANCE_LOW)
                .apply { description = app.getString(R.string.rest_channel_about) },
        )
        // The ring makes the marks itself; the channel only brings the words to the front.
        manager.createNotificationChannel(
            NotificationChannel(OVER, app.getString(R.string.over_channel), NotificationManager.IMPORTANCE_HIGH)
                .apply {
                    description = app.getString(R.string.over_channel_about)
                    setSound(null, null)
                    enableVibration(false)
                },
        )
        // Denied notifications are dropped here by the platform; the screen shows it all the same.
        manager.notify(ID, notification)
    }

    companion object {
        const val ID = 1
        const val COUNTDOWN = "rest"
        const val OVER = "over"
    }
}
