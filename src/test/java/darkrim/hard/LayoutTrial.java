package darkrim.hard;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.RandomLayoutText;
import darkrim.layout.SideFiles;
import darkrim.layout.form.Wording;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.MarginScope;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;

/**
 * Layout files: of the table of keys, and changed copies of those that are shipped or known to be broken. One that reads well is put together, and
 * some of those checked with a tiny budget.
 */
final class LayoutTrial implements Trial {
    private static final long MOST_SAMPLES = 2_000;

    private final Corpus corpus;
    private final Corpus shipped;
    private final int checkOneIn;
    private final SideFiles beside = SideFiles.beside("geometries/fuzzed.yaml");
    private int readWell;

    /**
     * @param checkOneIn which share of those that read well is checked
     */
    LayoutTrial(int checkOneIn) throws IOException {
        this.checkOneIn = checkOneIn;
        shipped = Corpus.of(List.of(Path.of("geometries")), ".yaml");
        corpus = Corpus.of(List.of(Path.of("geometries"), Path.of("src/test/resources")), ".yaml");
    }

    @Override
    public String name() {
        return "layouts";
    }

    @Override
    public byte[] input(SplittableRandom random) {
        if (random.nextInt(3) == 0) {
            byte[] made = new RandomLayoutText(random).next().getBytes(StandardCharsets.UTF_8);
            return random.nextInt(4) == 0 ? new Mutation(random).of(made, corpus.any(random)) : made;
        }
        Mutation mutation = new Mutation(random);
        return random.nextBoolean()
                ? mutation.of(corpus.any(random), corpus.any(random))
                : mutation.near(shipped.any(random));
    }

    @Override
    public End read(byte[] input) {
        LayoutReading reading = LayoutReader.read("geometries/fuzzed.yaml", input, Map.of(), beside);
        requireShown(reading.findings());
        if (reading.hasErrors() || reading.layout().isEmpty()) {
            return End.REFUSED;
        }
        if (readWell++ % checkOneIn != 0) {
            return End.USED;
        }
        Findings findings = new Findings();
        findings.addAll(reading.findings());
        Effort effort = new Effort(1, Optional.empty(), Optional.of(MOST_SAMPLES), MarginScope.NONE);
        try {
            Check.of(reading.layout().get(), findings, effort, new Impatient());
            return End.USED;
        } catch (UnusableInput refused) {
            requireShown(refused.findings());
            return End.REFUSED;
        }
    }

    /** A finding is one line that does nothing to a terminal, and stands somewhere in the file. */
    static void requireShown(List<Finding> findings) {
        for (Finding finding : findings) {
            String shown = finding.toString();
            if (shown.codePoints().anyMatch(Wording::isControl)) {
                throw new AssertionError("control characters in: " + Wording.oneLine(shown));
            }
            if (shown.length() > 4000) {
                throw new AssertionError("a finding of " + shown.length() + " characters: " + shown.substring(0, 200));
            }
        }
    }

    /** Asks to stop after a second. */
    private static final class Impatient implements Watch {
        private final long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(1);

        @Override
        public void progress(String step, long done, long most) {}

        @Override
        public boolean stop() {
            return System.nanoTime() > end;
        }
    }
}
