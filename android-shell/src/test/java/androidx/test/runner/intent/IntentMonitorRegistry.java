// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.runner.intent;

public final class IntentMonitorRegistry {
    private IntentMonitorRegistry() {}

    public static void registerInstance(IntentMonitor monitor) {}
}
