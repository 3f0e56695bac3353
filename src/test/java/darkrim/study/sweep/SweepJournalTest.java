package darkrim.study.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.study.LayoutFamily;
import darkrim.study.UnusableStudy;
import darkrim.study.journal.StudyJournal;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.zip.CRC32C;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The file that lets a sweep go on. */
class SweepJournalTest {
    private static final LayoutFamily FAMILY = Sweeps.slit("mean: {surfaces: screen/front, direct: {at_most: 0.1}}");

    @TempDir
    private Path folder;

    private Path file;
    private SweepSettings settings;
    private SweepTable table;

    @BeforeEach
    void prepare() throws Exception {
        file = folder.resolve("slit.csv.part");
        settings = settings("slit = 1 to 4 step 1", Optional.of(0.3));
        table = new SweepTable(settings.design().variations(), FAMILY.written().requirements());
    }

    private static SweepSettings settings(String vary, Optional<Double> refine) throws Exception {
        return Sweeps.settings(Sweeps.design(FAMILY, Optional.empty(), refine, vary));
    }

    private List<String> study() {
        return settings.study(FAMILY, "1.0");
    }

    private StudyJournal<SweepPoint> open() throws Exception {
        return StudyJournal.open(file, study(), table);
    }

    private SweepResult run() throws Exception {
        try (StudyJournal<SweepPoint> journal = open()) {
            return Sweeps.run(FAMILY, settings, journal, Watch.NONE, 2);
        }
    }

    @Test
    void wheneverTheFileWasCutTheSweepGoesOnAndEndsWithTheSameBytes() throws Exception {
        SweepResult whole = run();
        assertThat(whole.points().size()).as("refining adds points").isGreaterThan(4);
        byte[] bytes = Files.readAllBytes(file);
        for (int length = 0; length < bytes.length; length += 97) {
            Files.write(file, Arrays.copyOf(bytes, length));
            assertThat(run()).as("cut after %d bytes", length).isEqualTo(whole);
            assertThat(file).hasBinaryContent(bytes);
        }
    }

    @Test
    void whatIsFinishedIsNotWorkedOutAgain() throws Exception {
        run();
        try (StudyJournal<SweepPoint> journal = open()) {
            assertThat(journal.found()).hasSizeGreaterThan(4);
            SweepResult again = new SweepStudy(FAMILY, settings).run(new Idle(), journal, Watch.NONE);
            assertThat(again.stopped()).isFalse();
        }
    }

    /** Workers that must not be asked. */
    private static final class Idle implements darkrim.study.PointWorkers {
        @Override
        public int work(
                darkrim.study.PointCheck check,
                List<darkrim.study.Point> points,
                java.util.function.Consumer<darkrim.study.PointResult> results,
                java.util.function.BooleanSupplier stop) {
            throw new AssertionError("asked for " + points);
        }

        @Override
        public void close() {}
    }

    @Test
    void anotherStudyIsRefusedAndItsFileStays() throws Exception {
        run();
        byte[] bytes = Files.readAllBytes(file);
        settings = settings("slit = 1 to 3 step 1", Optional.of(0.3));
        assertThatThrownBy(this::open)
                .isInstanceOf(UnusableStudy.class)
                .hasMessageContaining("belongs to another study (vary slit = 1 mm to 4 mm step 1 mm)");
        assertThatThrownBy(() -> StudyJournal.open(
                        file, settings("slit = 1 to 4 step 1", Optional.of(0.3)).study(FAMILY, "2.0"), table))
                .hasMessageContaining("version 1.0");
        assertThat(file).hasBinaryContent(bytes);
    }

    @Test
    void aFileOfSomethingElseIsRefusedAndStays() throws Exception {
        for (String text : List.of("my notes", "my notes\r\n", "\"torn")) {
            Files.writeString(file, text);
            assertThatThrownBy(this::open)
                    .isInstanceOf(UnusableStudy.class)
                    .hasMessageContaining("does not belong to this study");
            assertThat(file).hasContent(text);
        }
        Files.delete(file);
        Files.createDirectory(file);
        assertThatThrownBy(this::open).hasMessageContaining("is not an ordinary file");
    }

    @Test
    void damageInTheMiddleIsSaid() throws Exception {
        run();
        String text = Files.readString(file);
        Files.write(file, text.replace("\r\n2,", "\r\nx,").getBytes(StandardCharsets.UTF_8));
        assertThatThrownBy(this::open).hasMessageContaining("is damaged in line 4: remove it to begin anew");
        String second = text.lines()
                .filter(line -> line.startsWith("2,2.0,"))
                .findFirst()
                .orElseThrow();
        String body = second.substring(0, second.lastIndexOf(',')).replace("2,2.0,", "2,2.5,");
        CRC32C sum = new CRC32C();
        sum.update(body.getBytes(StandardCharsets.UTF_8));
        Files.writeString(file, text.replace(second, "%s,%08x".formatted(body, sum.getValue())));
        assertThatThrownBy(this::run).hasMessageContaining("holds another point 2");
    }

    @Test
    void twoRunsAtOnceAreRefused() throws Exception {
        try (StudyJournal<SweepPoint> first = open()) {
            assertThat(first.found()).isEmpty();
            assertThatThrownBy(this::open).hasMessageContaining("another run is at work on");
        }
        open().close();
    }
}
