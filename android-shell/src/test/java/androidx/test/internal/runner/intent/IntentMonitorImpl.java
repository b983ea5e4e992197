// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.internal.runner.intent;

import android.content.Intent;
import androidx.test.runner.intent.IntentMonitor;

public final class IntentMonitorImpl implements IntentMonitor {
    public void signalIntent(Intent intent) {}
}
