package darkrim.verdict;

import java.util.concurrent.atomic.AtomicInteger;

/** Asks to stop from the moment on that a step begins, as Ctrl-C does; where it is sampling, before its first sample. */
public final class StoppingWatch implements Watch {
    private final String last;
    private boolean reached;

    private StoppingWatch(String last) {
        this.last = last;
    }

    /** One that stops at a step, of which it hears by {@link Watch#progress}. */
    public static Watch at(String step) {
        return new StoppingWatch(step);
    }

    /** One that says no to so many questions, whoever asks them, and yes from then on. */
    public static Watch after(int questions) {
        AtomicInteger asked = new AtomicInteger();
        return new Watch() {
            @Override
            public void progress(String step, long done, long most) {}

            @Override
            public boolean stop() {
                return asked.incrementAndGet() > questions;
            }
        };
    }

    @Override
    public void progress(String step, long done, long most) {
        boolean proved = step.equals("bounding reflected light") && done == most;
        reached |= step.equals(last) || (last.equals("sampling light") && proved);
    }

    @Override
    public boolean stop() {
        return reached;
    }
}
