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
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.zip.CRC32C;

/** Changed journals of a sweep; every other one has the right check sums again, so that what comes behind them is tried too. */
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
        byte[] changed = new Mutation(random).of(whole, whole);
        return random.nextBoolean() ? summed(changed) : changed;
    }

    /** Gives each line from the third on the sum that it would have, in the place of its last field. */
    private static byte[] summed(byte[] journal) {
        String[] lines = new String(journal, StandardCharsets.ISO_8859_1).split("(?<=\r\n)", -1);
        StringBuilder all = new StringBuilder();
        for (int i = 0; i < lines.length; i++) {
            int comma = lines[i].lastIndexOf(',');
            boolean isWhole = i > 1 && comma >= 0 && lines[i].endsWith("\r\n");
            all.append(isWhole ? summed(lines[i].substring(0, comma)) : lines[i]);
        }
        return all.toString().getBytes(StandardCharsets.ISO_8859_1);
    }

    private static String summed(String body) {
        CRC32C sum = new CRC32C();
        // As the program reads it: bytes that are no UTF-8 have become something else.
        byte[] bytes = body.getBytes(StandardCharsets.ISO_8859_1);
        sum.update(new String(bytes, StandardCharsets.UTF_8).getBytes(StandardCharsets.UTF_8));
        return "%s,%08x\r\n".formatted(body, sum.getValue());
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
