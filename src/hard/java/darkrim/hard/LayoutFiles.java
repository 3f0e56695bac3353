package darkrim.hard;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SplittableRandom;

/** Writes layouts by chance into a folder, for the jar to read: {@code LayoutFiles FOLDER COUNT SEED}. */
public final class LayoutFiles {
    private LayoutFiles() {}

    /** Writes {@code 1.yaml}, {@code 2.yaml}... the same ones as {@code LongFuzz} tries first with that seed. */
    public static void main(String[] arguments) throws Exception {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        int count = Integer.parseInt(arguments[1]);
        SplittableRandom seeds = new SplittableRandom(Long.parseLong(arguments[2]));
        LayoutTrial trial = new LayoutTrial(1);
        for (int i = 1; i <= count; i++) {
            Files.write(folder.resolve(i + ".yaml"), trial.input(seeds.split()));
        }
    }
}
