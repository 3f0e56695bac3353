package darkrim.study.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.study.LayoutFamily;
import darkrim.study.PointWorkers;
import darkrim.study.UnusableStudy;
import darkrim.study.journal.StudyJournal;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The file that lets a tolerance study go on. At the lower end of {@code share} the screen cannot be built. */
class ToleranceJournalTest {
    private static final ToleranceSettings SETTINGS =
            new ToleranceSettings(8, Optional.of(0.5), true, Optional.of(4L), 2);

    @TempDir
    private Path folder;

    private static LayoutFamily family() throws Exception {
        LayoutFamily edge = EdgeLayout.of(
                "edge: {value: -2.6, tolerance: 0.4}\nheight: 10\nshare: {value: 1, tolerance: {minus: 1, plus: 0}}",
                "placement_tolerance: {tilt: [0, 0, 1], distribution: normal}");
        String text = new String(edge.content(), StandardCharsets.UTF_8)
                .replace("depth: 4}", "depth: 4 * share}")
                .concat("  dim: {surfaces: screen/front, direct: {at_most: 0.2}}\n");
        return LayoutFamily.of("edge.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    private StudyJournal<Looked> open(ToleranceSettings settings) throws Exception {
        LayoutFamily family = family();
        return StudyJournal.open(
                folder.resolve("t.json.part"), settings.study(family, "1.0"), ToleranceStudy.table(family));
    }

    private ToleranceResult run(int threads) throws Exception {
        try (StudyJournal<Looked> journal = open(SETTINGS)) {
            return Tolerances.run(family(), SETTINGS, journal, Watch.NONE, threads);
        }
    }

    /** All that was found; the time differs. */
    private static String words(ToleranceResult result) {
        return List.of(result.contributors(), result.requirements(), result.builds(), result.yield(), result.loosest())
                .toString();
    }

    @Test
    void wheneverTheFileWasCutTheStudyGoesOnAndEndsWithTheSameBits() throws Exception {
        String whole = words(run(2));
        assertThat(whole).contains("share").contains("edge.yaml:");
        byte[] bytes = Files.readAllBytes(folder.resolve("t.json.part"));
        for (int length = 0; length < bytes.length; length += bytes.length / 12) {
            Files.write(folder.resolve("t.json.part"), Arrays.copyOf(bytes, length));
            assertThat(words(run(1 + length % 3)))
                    .as("cut after %d bytes", length)
                    .isEqualTo(whole);
            assertThat(folder.resolve("t.json.part")).hasBinaryContent(bytes);
        }
        assertThat(words(Tolerances.run(family(), SETTINGS, darkrim.study.journal.StudyRecord.none(), Watch.NONE, 2)))
                .as("without a journal")
                .isEqualTo(whole);
    }

    @Test
    void whatWasLookedAtIsNotLookedAtAgain() throws Exception {
        String whole = words(run(2));
        PointWorkers idle = new PointWorkers() {
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
        };
        try (StudyJournal<Looked> journal = open(SETTINGS)) {
            assertThat(words(ToleranceStudy.of(family(), SETTINGS, idle, journal, Watch.NONE)))
                    .isEqualTo(whole);
        }
    }

    @Test
    void aLineReadBackIsTheSameLookToTheLastBit() throws Exception {
        run(2);
        LookTable table = ToleranceStudy.table(family());
        List<Looked> found;
        try (StudyJournal<Looked> journal = open(SETTINGS)) {
            found = new ArrayList<>(journal.found());
        }
        assertThat(found).hasSizeGreaterThan(30).doesNotHaveDuplicates();
        assertThat(found).allSatisfy(each -> assertThat(table.kept(each)).isEqualTo(each));
        assertThatThrownBy(() -> table.read("1,2\r\n", 1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void anotherStudyIsRefusedAndItsFileStays() throws Exception {
        run(2);
        byte[] bytes = Files.readAllBytes(folder.resolve("t.json.part"));
        ToleranceSettings more = new ToleranceSettings(9, Optional.of(0.5), true, Optional.of(4L), 2);
        assertThatThrownBy(() -> open(more))
                .isInstanceOf(UnusableStudy.class)
                .hasMessageContaining("belongs to another study (builds 8)");
        assertThat(folder.resolve("t.json.part")).hasBinaryContent(bytes);
    }
}
