package darkrim.hard;

import java.io.IOException;
import java.io.UncheckedIOException;

/** Layouts for a search that is led by which branches an input takes: changes that reach new code are kept and changed on. */
public final class GuidedLayouts {
    private static final LayoutTrial TRIAL = trial();

    private GuidedLayouts() {}

    private static LayoutTrial trial() {
        try {
            // Reads and puts together; what is checked on top would take all the time.
            return new LayoutTrial(Integer.MAX_VALUE);
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }

    /** Called by the engine with each input; an exception is a find. */
    public static void fuzzerTestOneInput(byte[] input) {
        TRIAL.read(input);
    }
}
