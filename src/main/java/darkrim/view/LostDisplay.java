package darkrim.view;

import com.sun.jna.Callback;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Pointer;
import java.util.function.IntSupplier;

/**
 * Hears that the X server has gone. The toolkit would then end the whole process at once and without a word, with the code 1, which here says that
 * a requirement fails: Xlib calls what is set here instead (XSetIOErrorHandler, Xlib - C Language X Interface, section 11.8.2).
 */
final class LostDisplay {
    /** Held, so that it is there when Xlib calls it. */
    private static Xlib.Handler handler = display -> 0;

    private LostDisplay() {}

    /** The one function that is called. */
    interface Xlib extends Library {
        /** What Xlib calls when a connection breaks; it must not come back, or Xlib ends the process. */
        interface Handler extends Callback {
            /** Called with the connection that broke; what it returns is of no interest. */
            int invoke(Pointer display);
        }

        /** Sets the handler of all connections; the one before comes back. */
        Pointer XSetIOErrorHandler(Handler handler);
    }

    /**
     * From now on ends the process when the display is lost. To be called when the toolkit has begun, for it sets a handler of its own.
     *
     * @param lost says so and returns the exit code; called from the thread that noticed
     */
    static void heed(IntSupplier lost) {
        if (!PlainEnd.isLinux()) {
            return;
        }
        try {
            Xlib xlib = Native.load("X11", Xlib.class);
            PlainEnd.Standard standard = PlainEnd.library();
            handler = display -> {
                standard._exit(lost.getAsInt());
                return 0;
            };
            xlib.XSetIOErrorHandler(handler);
        } catch (LinkageError missing) {
            // No Xlib, or no place for the library that calls it: the toolkit ends the program in its own way.
        }
    }
}
