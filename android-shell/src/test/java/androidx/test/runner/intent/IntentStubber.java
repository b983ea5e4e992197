// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.runner.intent;

import android.app.Instrumentation;
import android.content.Intent;

public interface IntentStubber {
    Instrumentation.ActivityResult getActivityResultForIntent(Intent intent);
}
