package darkrim.study.journal;

import java.io.IOException;
import java.util.List;

/**
 * Where a study keeps what it has finished while it runs, so that it can go on after an interruption.
 *
 * @param <T> what it finishes one by one
 */
public interface StudyRecord<T> extends AutoCloseable {
    /** Keeps nothing. */
    static <T> StudyRecord<T> none() {
        return new StudyRecord<>() {
            @Override
            public List<T> found() {
                return List.of();
            }

            @Override
            public void append(T entry) {}

            @Override
            public void close() {}
        };
    }

    /** What an earlier run has finished, in the order in which it was kept. */
    List<T> found();

    /**
     * Keeps what has just been finished.
     *
     * @throws IOException if it cannot be kept
     */
    void append(T entry) throws IOException;

    @Override
    void close() throws IOException;
}
