// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.platform.app;

import android.app.Instrumentation;
import android.os.Bundle;

public final class InstrumentationRegistry {
    private static Instrumentation instance;
    private static Bundle arguments = new Bundle();

    private InstrumentationRegistry() {}

    public static Instrumentation getInstrumentation() {
        if (instance == null) throw new IllegalStateException("no instrumentation");
        return instance;
    }

    public static Bundle getArguments() {
        return new Bundle(arguments);
    }

    public static void registerInstance(Instrumentation one, Bundle with) {
        instance = one;
        arguments = new Bundle(with);
    }
}
