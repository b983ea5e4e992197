package barwright.android

import android.app.Activity
import android.content.Intent as Call
import android.os.Bundle

/** The door for a plan opened from another app: hands it to the screens and is gone. */
class PlanFileActivity : Activity() {
    override fun onCreate(savedInstanceState: Bundle?) {
        super.onCreate(savedInstanceState)
        val file = intent?.data
        if (file != null) {
            startActivity(
                Call(this, MainActivity::class.java)
                    .setAction(Call.ACTION_VIEW)
                    .setData(file)
                    .addFlags(Call.FLAG_GRANT_READ_URI_PERMISSION or Call.FLAG_ACTIVITY_NEW_TASK),
            )
        }
        finish()
    }
}
