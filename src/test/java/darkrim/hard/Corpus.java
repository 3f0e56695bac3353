package darkrim.hard;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/**
 * Files to begin with.
 *
 * @param files their bytes, in the order of their paths
 */
record Corpus(List<byte[]> files) {
    /** All files in folders and below whose names end in some way and that have at most 100 kB. */
    static Corpus of(List<Path> folders, String end) throws IOException {
        List<byte[]> found = new ArrayList<>();
        for (Path folder : folders) {
            try (Stream<Path> paths = Files.walk(folder)) {
                for (Path path : paths.filter(each -> each.toString().endsWith(end))
                        .sorted()
                        .toList()) {
                    if (Files.size(path) <= 100_000) {
                        found.add(Files.readAllBytes(path));
                    }
                }
            }
        }
        if (found.isEmpty()) {
            throw new IllegalStateException("no files " + end + " in " + folders);
        }
        return new Corpus(found);
    }

    byte[] any(SplittableRandom random) {
        return files.get(random.nextInt(files.size()));
    }
}
