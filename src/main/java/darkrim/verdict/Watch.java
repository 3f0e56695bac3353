package darkrim.verdict;

import java.util.function.BooleanSupplier;

/** Watches long work: hears how far it is and may ask it to stop. */
public interface Watch {
    /** Hears nothing and never asks to stop. */
    Watch NONE = stopping(() -> false);

    /** Hears nothing, and asks to stop when it is told to. */
    static Watch stopping(BooleanSupplier asked) {
        return new Watch() {
            @Override
            public void progress(String step, long done, long most) {}

            @Override
            public boolean stop() {
                return asked.getAsBoolean();
            }
        };
    }

    /**
     * How far the work is. Called from one thread.
     *
     * @param step what is being done, a few plain words
     * @param done units done
     * @param most units at most; the work may end before
     */
    void progress(String step, long done, long most);

    /** Whether to stop at the next opportunity and keep what is finished. Called often, from any thread. */
    boolean stop();
}
