package darkrim.verdict;

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
