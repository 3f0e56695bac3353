package darkrim.cli;

import darkrim.study.journal.StudyRecord;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A record that knows how much it holds.
 *
 * @param <T> what is kept
 */
final class CountedRecord<T> implements StudyRecord<T> {
    private final StudyRecord<T> record;
    private final AtomicLong count;

    CountedRecord(StudyRecord<T> record) {
        this.record = record;
        count = new AtomicLong(record.found().size());
    }

    /** How many are kept, by an earlier run too. */
    long count() {
        return count.get();
    }

    @Override
    public List<T> found() {
        return record.found();
    }

    @Override
    public void append(T entry) throws IOException {
        record.append(entry);
        count.incrementAndGet();
    }

    @Override
    public void close() throws IOException {
        record.close();
    }
}
