// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.runner.lifecycle;

public final class ApplicationLifecycleMonitorRegistry {
    private ApplicationLifecycleMonitorRegistry() {}

    public static void registerInstance(ApplicationLifecycleMonitor monitor) {}
}
