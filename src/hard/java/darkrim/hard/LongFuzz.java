package darkrim.hard;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Files by chance for as long as one likes: {@code LongFuzz MINUTES SEED}; exit code 1 if one was not borne. */
public final class LongFuzz {
    private LongFuzz() {}

    /** Tries each kind of file for an equal share of the time, and keeps what was not borne beside the build. */
    public static void main(String[] arguments) throws Exception {
        double minutes = Double.parseDouble(arguments[0]);
        long seed = Long.parseLong(arguments[1]);
        Path folder = Files.createTempDirectory("darkrim-fuzz-");
        long tried = 0;
        long faults = 0;
        try {
            List<Trial> trials = List.of(
                    new LayoutTrial(5),
                    new MeshTrial(folder),
                    new TableTrial(),
                    new ResultTrial(folder),
                    new JournalTrial(folder));
            for (Trial trial : trials) {
                long end = System.nanoTime() + (long) (minutes * TimeUnit.MINUTES.toNanos(1) / trials.size());
                Fuzzing.Tally tally = Fuzzing.run(trial, seed, () -> System.nanoTime() > end);
                System.out.println(tally);
                tried += tally.tried();
                faults += tally.faults().size();
                keep(tally);
            }
        } finally {
            delete(folder);
        }
        System.out.println("inputs tried: " + tried + ", not borne: " + faults);
        System.exit(faults == 0 ? 0 : 1);
    }

    private static void keep(Fuzzing.Tally tally) throws IOException {
        for (Fuzzing.Fault fault : tally.faults()) {
            Path kept = Path.of("target", "fuzz-" + tally.name().replace(' ', '-') + "-" + fault.number());
            Files.createDirectories(kept.getParent());
            Files.write(kept, fault.input().getBytes(StandardCharsets.ISO_8859_1));
            System.out.println(kept + ": " + fault.what());
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
