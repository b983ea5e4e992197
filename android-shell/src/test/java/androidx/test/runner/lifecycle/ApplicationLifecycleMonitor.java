// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.runner.lifecycle;

public interface ApplicationLifecycleMonitor {}
