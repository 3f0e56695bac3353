package darkrim.verdict;

/** Watches long work: hears how far it is and may ask it to stop. */
public interface Watch {
    /** Hears nothing and never asks to stop. */
    Watch NONE = new Watch() {
        @Override
        public void progress(String step, long done, long most) {}

        @Override
        public boolean stop() {
            return false;
        }
    };

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
