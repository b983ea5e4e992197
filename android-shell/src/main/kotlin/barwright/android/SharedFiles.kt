package barwright.android

import android.content.ContentProvider
import android.content.ContentValues
import android.database.Cursor
import android.database.MatrixCursor
import android.net.Uri
import android.os.ParcelFileDescriptor
import android.provider.OpenableColumns
import java.io.File
import java.io.FileNotFoundException

/** Hands out the files that were offered to share in this process, read only, and no others. */
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

    private fun file(uri: Uri): File =
        offered[uri.lastPathSegment] ?: throw FileNotFoundException("not offered")

    companion object {
        private val offered = HashMap<String, File>()

        fun uriOf(path: String): Uri {
            val file = File(path)
            offered[file.name] = file
            return Uri.Builder().scheme("content").authority("barwright.android.files")
                .appendPath(file.name).build()
        }
    }
}
