// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.espresso;

public interface IdlingResource {
    interface ResourceCallback {
        void onTransitionToIdle();
    }

    String getName();

    boolean isIdleNow();

    void registerIdleTransitionCallback(ResourceCallback callback);
}
