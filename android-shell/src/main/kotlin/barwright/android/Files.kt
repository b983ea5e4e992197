package barwright.android

import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.Intent as Call
import android.net.Uri
import barwright.core.FormFile
import barwright.core.Intent
import barwright.core.Look
import java.io.ByteArrayOutputStream
import java.io.File
import java.io.IOException
import java.io.InputStream

/**
 * Files in and out: a plan or a gym that another app hands over or the picker finds, and copies of
 * the records. The core reads and writes what is in them.
 */
class Files(private val activity: Activity, private val then: Then) {
    /** Who does something with a file that was read. */
    interface Then {
        fun go(look: Look)

        fun hand(intent: Intent)

        fun say(words: String)

        fun said(why: barwright.core.EngineException)
    }

    private val app get() = activity.app

    /** A plan opened from another app. */
    fun opened(call: Call) {
        val file = call.data
        if (call.action == Call.ACTION_VIEW && file != null) read(file) { then.go(Look.Plan(it, null)) }
    }

    fun openPlan() = open(PLAN)

    fun openGym() = open(GYM)

    private fun open(what: Int) = ask(
        // No type of its own is known to every device: the core says what a file is not.
        Call(Call.ACTION_OPEN_DOCUMENT).addCategory(Call.CATEGORY_OPENABLE).setType("*/*"),
        what,
    )

    /** A copy of the records to whichever app takes it. */
    fun shareRecords() = copy { activity.startActivity(SharedFiles.sheet(it, RECORDS_TYPE)) }

    /** What was made by hand, as a file, to whichever app takes it. */
    fun handOn(file: FormFile) {
        val to = File(SharedFiles.folder(activity), File(file.name).name)
        app.core.off({
            try {
                to.writeText(file.text)
                true
            } catch (_: IOException) {
                false
            }
        }) { done ->
            if (done) activity.startActivity(SharedFiles.sheet(to, TEXT_TYPE))
            else then.say(activity.getString(R.string.not_handed_on))
        }
    }

    /** A copy of the records to a place that the picker finds. */
    fun saveRecords() = ask(
        Call(Call.ACTION_CREATE_DOCUMENT).addCategory(Call.CATEGORY_OPENABLE)
            .setType(RECORDS_TYPE).putExtra(Call.EXTRA_TITLE, RECORDS_NAME),
        SAVE,
    )

    /** Reads the whole file of the records. */
    fun checkRecords() = app.core.ask({ it.checkRecords() }, then::said) { entries ->
        val words = activity.resources.getQuantityString(R.plurals.records_whole, entries.toInt(), "$entries")
        then.say(words)
    }

    /** The picker's answer. */
    fun picked(what: Int, result: Int, file: Uri?) {
        if (result != Activity.RESULT_OK || file == null) return
        when (what) {
            PLAN -> read(file) { then.go(Look.Plan(it, null)) }
            GYM -> read(file) { then.hand(Intent.AddGym(it)) }
            SAVE -> copy { write(it, file) }
        }
    }

    private fun ask(call: Call, what: Int) = try {
        activity.startActivityForResult(call, what)
    } catch (_: ActivityNotFoundException) {
        then.say(activity.getString(R.string.no_picker))
    }

    /** A whole copy, checked by the core, in the folder that is handed out. */
    private fun copy(done: (File) -> Unit) {
        val copy = File(SharedFiles.folder(activity), RECORDS_NAME)
        app.core.ask(
            { engine ->
                // The core never writes over a file.
                copy.delete()
                engine.backUp(copy.path)
            },
            then::said,
        ) { done(copy) }
    }

    private fun write(copy: File, to: Uri) = app.core.off({
        try {
            val out = activity.contentResolver.openOutputStream(to, "wt") ?: throw IOException()
            out.use { copy.inputStream().use { from -> from.copyTo(it) } }
            R.string.records_saved
        } catch (_: IOException) {
            R.string.records_not_saved
        } catch (_: SecurityException) {
            R.string.records_not_saved
        }
    }) { then.say(activity.getString(it)) }

    private fun read(file: Uri, done: (String) -> Unit) = app.core.off({
        try {
            // No further than any file of ours could go; the core says when it is too long.
            activity.contentResolver.openInputStream(file)?.use { String(it.upTo(MOST_BYTES), Charsets.UTF_8) }
        } catch (_: IOException) {
            null
        } catch (_: SecurityException) {
            null
        }
    }) { text -> if (text == null) then.say(activity.getString(R.string.unreadable_file)) else done(text) }

    private fun InputStream.upTo(most: Int): ByteArray {
        val all = ByteArrayOutputStream()
        val some = ByteArray(1 shl 16)
        while (all.size() < most) {
            val count = read(some, 0, minOf(some.size, most - all.size()))
            if (count < 0) break
            all.write(some, 0, count)
        }
        return all.toByteArray()
    }

    companion object {
        const val PLAN = 1
        const val GYM = 2
        const val SAVE = 3
        private const val MOST_BYTES = 17 shl 20
        private const val RECORDS_NAME = "barwright-records.db"
        private const val TEXT_TYPE = "text/plain"
        private const val RECORDS_TYPE = "application/vnd.sqlite3"
    }
}
