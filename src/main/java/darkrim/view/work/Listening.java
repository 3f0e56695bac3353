package darkrim.view.work;

import darkrim.verdict.Watch;
import java.util.function.BooleanSupplier;

/** Tells how far some work in the background is, a few times a second, and ends it when something else is asked for. */
final class Listening implements Watch {
    private static final long PAUSE_NANOSECONDS = 100_000_000;

    private final BooleanSupplier stop;
    private final Told told;
    private long last = System.nanoTime() - PAUSE_NANOSECONDS;

    /** Hears how far it is. */
    interface Told {
        /**
         * Hears it.
         *
         * @param step what is done
         * @param done how much of it is
         * @param most of how much; 0 where that is not known
         */
        void progress(String step, long done, long most);
    }

    /** Ends work of which nobody wants to hear before its end. */
    Listening(BooleanSupplier stop) {
        this(stop, (step, done, most) -> {});
    }

    Listening(BooleanSupplier stop, Told told) {
        this.stop = stop;
        this.told = told;
    }

    @Override
    public void progress(String step, long done, long most) {
        long now = System.nanoTime();
        if (now - last >= PAUSE_NANOSECONDS) {
            last = now;
            told.progress(step, done, most);
        }
    }

    @Override
    public boolean stop() {
        return stop.getAsBoolean();
    }
}
