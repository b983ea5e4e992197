// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.espresso;

import android.os.Looper;
import java.util.Collection;
import java.util.Collections;

public final class IdlingRegistry {
    private static final IdlingRegistry ONE = new IdlingRegistry();

    private IdlingRegistry() {}

    public static IdlingRegistry getInstance() {
        return ONE;
    }

    public Collection<IdlingResource> getResources() {
        return Collections.emptyList();
    }

    public Collection<Looper> getLoopers() {
        return Collections.emptyList();
    }
}
