package darkrim.cli;

import static darkrim.cli.ReportRun.NEW_YEAR;
import static darkrim.cli.ReportRun.report;
import static org.assertj.core.api.Assertions.assertThat;

import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When {@code darkrim report} writes nothing. */
class ReportRefusalTest {
    @TempDir
    private static Path folder;

    private static Path layout;

    @BeforeAll
    static void aLayout() throws IOException {
        layout = Files.copy(Path.of("src/test/resources/layouts/small.yaml"), at("small.yaml"));
    }

    private static Path at(String name) {
        return folder.resolve(name);
    }

    @Test
    void whatCannotBeWrittenIsSaidBeforeAnyWorkAndNothingIsWritten() throws IOException {
        Path kept = Files.writeString(at("kept.html"), "mine");
        Run refused = report(NEW_YEAR, layout, "-o", kept, "-o", at("review.txt"));
        assertThat(refused.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(refused.errors())
                .contains("kept.html: there is such a file already; --overwrite replaces it")
                .contains("review.txt: expected a name that ends in .html or .pdf");
        assertThat(kept).hasContent("mine");
        assertThat(at("review.txt")).doesNotExist();
        Run lost = report(NEW_YEAR, layout, "-o", layout, "--overwrite", "--against", layout);
        assertThat(lost.code()).isEqualTo(ExitCode.UNUSABLE);
    }

    @Test
    void bothLayoutsAreReadBeforeOneIsRefused() throws IOException {
        Path one = Files.writeString(at("one.yaml"), "title: 3\nbeem: 4\n");
        Path two = Files.writeString(at("two.yaml"), "titel: 3\n");
        Run refused = report(NEW_YEAR, one, "--against", two, "-o", at("none.html"));
        assertThat(refused.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(refused.errors()).contains("one.yaml:2:1").contains("two.yaml:1:1");
        assertThat(at("none.html")).doesNotExist();
    }

    @Test
    void aDateThatIsNoMomentIsRefused() {
        Run refused = report(Map.of("SOURCE_DATE_EPOCH", "yesterday"), layout, "-o", at("dated.html"));
        assertThat(refused.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(refused.errors()).contains("SOURCE_DATE_EPOCH is 'yesterday', expected seconds since 1970");
        assertThat(at("dated.html")).doesNotExist();
    }

    @Test
    void stoppedWorkWritesNothing() {
        Watch stopping = StoppingWatch.after(0);
        Run stopped = report(stopping, NEW_YEAR, layout, "-o", at("stopped.html"));
        assertThat(stopped.code()).isEqualTo(ExitCode.UNDECIDED);
        assertThat(stopped.errors()).contains("the work was stopped; nothing was written");
        assertThat(at("stopped.html")).doesNotExist();
    }

    @Test
    void workThatIsStoppedWhileThePagesAreMadeWritesNothing() {
        AtomicBoolean asked = new AtomicBoolean();
        Watch stopping = new Watch() {
            @Override
            public void progress(String step, long done, long most) {
                // Asked to stop while the last of two files is made, too late for anything but not to write it.
                asked.set(asked.get() || (step.equals("pages") && done == most - 1));
            }

            @Override
            public boolean stop() {
                return asked.get();
            }
        };
        Run stopped =
                report(stopping, NEW_YEAR, layout, "-o", at("late.html"), "-o", at("late.pdf"), "--samples", "1e4");
        assertThat(asked).isTrue();
        assertThat(stopped.code()).isEqualTo(ExitCode.UNDECIDED);
        assertThat(stopped.errors()).contains("the work was stopped; nothing was written");
        assertThat(at("late.html")).doesNotExist();
        assertThat(at("late.pdf")).doesNotExist();
    }
}
