// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.runner.lifecycle;

public final class ActivityLifecycleMonitorRegistry {
    private static ActivityLifecycleMonitor instance;

    private ActivityLifecycleMonitorRegistry() {}

    public static ActivityLifecycleMonitor getInstance() {
        if (instance == null) throw new IllegalStateException("no monitor");
        return instance;
    }

    public static void registerInstance(ActivityLifecycleMonitor monitor) {
        instance = monitor;
    }
}
