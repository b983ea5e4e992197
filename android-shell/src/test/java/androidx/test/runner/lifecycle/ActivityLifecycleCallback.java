// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.runner.lifecycle;

import android.app.Activity;

public interface ActivityLifecycleCallback {
    void onActivityLifecycleChanged(Activity activity, Stage stage);
}
