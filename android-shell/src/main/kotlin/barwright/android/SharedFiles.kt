package barwright.android

import android.content.ClipData
import android.content.ContentProvider
import android.content.ContentValues
import android.content.Context
import android.content.Intent as Call
import android.database.Cursor
import android.database.MatrixCursor
import android.net.Uri
import android.os.ParcelFileDescriptor
import android.provider.OpenableColumns
import java.io.File
import java.io.FileNotFoundException

/**
 * Hands out the files of one folder, read only, to whoever was shown one of them, and no others. The
 * folder is a cache: a process that died meanwhile still finds the file, the device may clear it.
 */
class SharedFiles : ContentProvider() {
    override fun onCreate() = true

    override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor {
        if (mode != "r") throw FileNotFoundException("read only")
        return ParcelFileDescriptor.open(file(uri), ParcelFileDescriptor.MODE_READ_ONLY)
    }

    override fun query(
        uri: Uri,
        projection: Array<String>?,
        selection: String?,
        selectionArgs: Array<String>?,
        sortOrder: String?,
    ): Cursor {
        val file = file(uri)
        return MatrixCursor(arrayOf(OpenableColumns.DISPLAY_NAME, OpenableColumns.SIZE)).apply {
            addRow(arrayOf<Any>(file.name, file.length()))
        }
    }

    override fun getType(uri: Uri): String = "application/octet-stream"

    override fun insert(uri: Uri, values: ContentValues?): Uri? = null

    override fun update(uri: Uri, values: ContentValues?, where: String?, args: Array<String>?) = 0

    override fun delete(uri: Uri, where: String?, args: Array<String>?) = 0

    private fun file(uri: Uri): File {
        // A name alone, so that no path leads out of the folder.
        val name = uri.pathSegments.singleOrNull()?.takeUnless { it.contains('/') || it == ".." }
            ?: throw FileNotFoundException("not offered")
        val file = File(folder(context!!), name)
        if (!file.isFile) throw FileNotFoundException("not offered")
        return file
    }

    companion object {
        private const val AUTHORITY = "barwright.android.files"

        /** Where a file to be shared lies. */
        fun folder(context: Context): File = File(context.cacheDir, "shared").apply { mkdirs() }

        /** A sheet of the device's to share a file of the folder with. */
        fun sheet(file: File, mediaType: String): Call {
            val uri = Uri.Builder().scheme("content").authority(AUTHORITY).appendPath(file.name).build()
            val send = Call(Call.ACTION_SEND)
                .setType(mediaType)
                .putExtra(Call.EXTRA_STREAM, uri)
                .addFlags(Call.FLAG_GRANT_READ_URI_PERMISSION)
            send.clipData = ClipData.newRawUri(null, uri)
            return Call.createChooser(send, null)
        }
    }
}
