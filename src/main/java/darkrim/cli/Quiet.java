package darkrim.cli;

import darkrim.verdict.Watch;
import java.util.function.BooleanSupplier;

/**
 * Shows nothing, and stops when asked.
 *
 * @param asked whether to stop
 */
record Quiet(BooleanSupplier asked) implements Watch {
    @Override
    public void progress(String step, long done, long most) {}

    @Override
    public boolean stop() {
        return asked.getAsBoolean();
    }
}
