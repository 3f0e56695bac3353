package darkrim.hard;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * 20,000 files by chance, with -Dlong=true 100,000: whatever one holds, it is used or refused in plain words; seeds are fixed. {@link Fuzzing} says
 * what else must hold. A run without end is in src/hard.
 */
class FuzzTest {
    @TempDir
    private Path folder;

    private static void bears(Trial trial, int all, double leastUsed) throws InterruptedException {
        int inputs = Boolean.getBoolean("long") ? all : all / 5;
        AtomicInteger left = new AtomicInteger(inputs);
        Fuzzing.Tally tally = Fuzzing.run(trial, 20261128, () -> left.getAndDecrement() <= 0);
        System.out.println(tally);
        assertThat(tally.faults())
                .map(fault -> fault.number() + ": " + fault.what() + "\n" + fault.input())
                .isEmpty();
        assertThat(tally.tried()).isEqualTo(inputs);
        // Inputs that are all refused at once would try nothing; that all are used, that nothing was changed.
        assertThat((double) tally.used() / tally.tried()).as("share read well").isBetween(leastUsed, 0.95);
    }

    @Test
    void layouts() throws Exception {
        bears(new LayoutTrial(100), 6_000, 0.05);
    }

    @Test
    void meshes() throws Exception {
        bears(new MeshTrial(folder), 60_000, 0.02);
    }

    @Test
    void finishTables() throws InterruptedException {
        bears(new TableTrial(), 18_000, 0.02);
    }

    @Test
    void results() throws Exception {
        bears(new ResultTrial(folder), 6_000, 0.02);
    }

    @Test
    void journals() throws Exception {
        bears(new JournalTrial(folder), 10_000, 0.02);
    }
}
