package darkrim.study.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.layout.form.Wording;
import darkrim.study.UnusableStudy;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lines that a disk has changed are not believed. */
class StudyJournalTest {
    private static final List<String> STUDY = List.of("sweep", "slit.yaml", "version 1");
    private static final List<String> ENTRIES = List.of("pass,0.25", "fail,0.125", "undecided,\u00b5m");

    /** Lines of two fields that take any text: only the sums tell what was changed. */
    private static final JournalLines<String> LINES = new JournalLines<>() {
        @Override
        public String header() {
            return "verdict,value\r\n";
        }

        @Override
        public String line(String entry) {
            return entry + "\r\n";
        }

        @Override
        public String read(String line, int number) {
            return line.substring(0, line.length() - 2);
        }
    };

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void write() throws Exception {
        file = folder.resolve("study.csv.part");
        try (StudyJournal<String> journal = StudyJournal.open(file, STUDY, LINES)) {
            for (String entry : ENTRIES) {
                journal.append(entry);
            }
        }
    }

    private List<String> found() throws Exception {
        try (StudyJournal<String> journal = StudyJournal.open(file, STUDY, LINES)) {
            return journal.found();
        }
    }

    @Test
    void whatWasKeptIsFound() throws Exception {
        assertThat(found()).isEqualTo(ENTRIES);
        // CRC-32C of "123456789" is e3069283 (RFC 3720, by way of its published check value).
        assertThat(SummedLine.of("123456789\r\n")).isEqualTo("123456789,e3069283\r\n");
    }

    @Test
    void noChangedBitIsBelieved() throws Exception {
        byte[] whole = Files.readAllBytes(file);
        int lastEnd = 8 * (whole.length - 2);
        for (int bit = 0; bit < 8 * whole.length; bit++) {
            byte[] changed = whole.clone();
            changed[bit / 8] ^= (byte) (1 << bit % 8);
            Files.write(file, changed);
            if (bit >= lastEnd) {
                // A last line without its end counts as torn, and is worked out again.
                assertThat(found()).as("bit %d", bit).isEqualTo(ENTRIES.subList(0, 2));
            } else {
                assertThatThrownBy(this::found).as("bit %d", bit).isInstanceOf(UnusableStudy.class);
                assertThat(file).hasBinaryContent(changed);
            }
        }
    }

    @Test
    void theFirstDamagedLineIsNamed() throws Exception {
        String text = Files.readString(file);
        Files.writeString(file, text.replace("0.125", "0.135"));
        assertThatThrownBy(this::found).hasMessageContaining("is damaged in line 4: remove it to begin anew");
        Files.writeString(file, text.replaceFirst("fail,0.125,[0-9a-f]{8}\r\n", ""));
        // A line that is gone is for the reader of the lines to notice: the sums of the others are right.
        assertThat(found()).containsExactly(ENTRIES.get(0), ENTRIES.get(2));
    }

    @Test
    void aJournalWithoutSumsIsRefusedInClearWords() throws Exception {
        String old = Files.readString(file).replace(",crc32c", "").replaceAll(",[0-9a-f]{8}\r\n", "\r\n");
        Files.writeString(file, old, StandardCharsets.UTF_8);
        assertThatThrownBy(this::found)
                .isInstanceOf(UnusableStudy.class)
                .hasMessageContaining("was begun by an older Darkrim, whose lines have no check sum");
        assertThat(file).hasContent(old);
    }

    @Test
    void whatAnotherStudySaysOfItselfIsQuotedWithoutControlCharacters() throws Exception {
        Files.delete(file);
        List<String> other = List.of("sweep", "a\u001b[2J\u0007\u202e.yaml", "x".repeat(10_000));
        StudyJournal.open(file, other, LINES).close();
        assertThatThrownBy(this::found).satisfies(refused -> {
            assertThat(refused)
                    .hasMessageContaining("belongs to another study (a")
                    .hasMessageContaining(".yaml");
            assertThat(refused.getMessage().codePoints()).noneMatch(Wording::isControl);
            assertThat(refused.getMessage()).hasSizeLessThan(1_000);
        });
    }

    @Test
    void oneThatIsTooLargeToBeReadBackIsCalledSo() throws Exception {
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength((1L << 30) + 1);
        }
        assertThatThrownBy(this::found)
                .isInstanceOf(UnusableStudy.class)
                .hasMessageEndingWith("is larger than 1 GiB, more than is read back: remove it or name another output");
    }
}
