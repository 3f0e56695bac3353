package darkrim.hard;

import darkrim.layout.form.Wording;
import darkrim.study.LayoutFamily;
import darkrim.study.UnusableStudy;
import darkrim.study.journal.StudyJournal;
import darkrim.study.journal.StudyRecord;
import darkrim.study.sweep.Design;
import darkrim.study.sweep.SweepPoint;
import darkrim.study.sweep.SweepTable;
import darkrim.study.sweep.Sweeps;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;

/** Changed journals of a sweep. */
final class JournalTrial implements Trial {
    private final Path file;
    private final SweepTable table;
    private final List<String> study;
    private final byte[] whole;

    /**
     * @param folder where the files go
     */
    JournalTrial(Path folder) throws Exception {
        file = folder.resolve("fuzzed.csv.part");
        LayoutFamily family = Sweeps.slit("dark: {surfaces: '{left,right}/back', direct: none}");
        Design design = Sweeps.grid(family, "slit = 1 to 4 step 1");
        table = new SweepTable(design.variations(), family.written().requirements());
        study = Sweeps.settings(design).study(family, "1");
        try (StudyRecord<SweepPoint> record = StudyJournal.open(file, study, table)) {
            Sweeps.run(family, Sweeps.settings(design), record, Watch.NONE, 1);
        }
        whole = Files.readAllBytes(file);
    }

    @Override
    public String name() {
        return "journals";
    }

    @Override
    public byte[] input(SplittableRandom random) {
        return new Mutation(random).of(whole, whole);
    }

    @Override
    public End read(byte[] input) throws IOException {
        Files.write(file, input);
        try (StudyRecord<SweepPoint> record = StudyJournal.open(file, study, table)) {
            record.found().forEach(table::line);
            return End.USED;
        } catch (UnusableStudy refused) {
            if (String.valueOf(refused.getMessage()).codePoints().anyMatch(Wording::isControl)) {
                throw new AssertionError("control characters in: " + Wording.oneLine(refused.getMessage()));
            }
            return End.REFUSED;
        }
    }
}
