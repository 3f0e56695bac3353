package darkrim.study.sweep;

import java.io.IOException;
import java.util.List;

/** Where the points of a sweep are kept while it runs, so that it can go on after an interruption. */
public interface SweepRecord extends AutoCloseable {
    /** Keeps nothing. */
    SweepRecord NONE = new SweepRecord() {
        @Override
        public List<SweepPoint> found() {
            return List.of();
        }

        @Override
        public void append(SweepPoint point) {}

        @Override
        public void close() {}
    };

    /** Points that an earlier run has finished, in the order of the work. */
    List<SweepPoint> found();

    /**
     * Keeps a point that has just been finished.
     *
     * @throws IOException if it cannot be kept
     */
    void append(SweepPoint point) throws IOException;

    @Override
    void close() throws IOException;
}
