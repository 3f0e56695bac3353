package darkrim.view;

import com.sun.jna.Library;
import com.sun.jna.Native;

/**
 * Ends the process without a word to the native libraries in it. An end by Java has them take themselves apart ({@code exit} of the C library) while
 * threads of the toolkit are still in them, which now and then ends in a crash.
 */
final class PlainEnd {
    private PlainEnd() {}

    /** The one function that is called. */
    interface Standard extends Library {
        /** Ends the process at once: nothing that was registered for its end is called (POSIX). */
        void _exit(int code);
    }

    /**
     * The function.
     *
     * @throws LinkageError if there is no place for the library that calls it
     */
    static Standard library() {
        return Native.load("c", Standard.class);
    }

    /** Ends the process on Linux; comes back elsewhere, and where that cannot be done. */
    static void of(int code) {
        if (!isLinux()) {
            return;
        }
        try {
            library()._exit(code);
        } catch (LinkageError | IllegalStateException missing) {
            // The program ends in Java's own way.
        }
    }

    static boolean isLinux() {
        return System.getProperty("os.name").equals("Linux");
    }
}
