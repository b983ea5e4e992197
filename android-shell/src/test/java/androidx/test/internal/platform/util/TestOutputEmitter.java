// Stands in for the class of the same name, which Robolectric asks for and this build leaves out.
package androidx.test.internal.platform.util;

public final class TestOutputEmitter {
    private TestOutputEmitter() {}

    public static void dumpThreadStates(String file) {}
}
