package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The steps of docs/tutorial.md, in order in one folder, print what the page shows. Nothing that is shown was sampled. */
class TutorialPageTest {
    private static final Pattern STEP = Pattern.compile(
            "```sh\\ndarkrim ([^#\\n]+)(?:# exit code (\\d))?\\n```\\n\\n```text\\n(.*?)```", Pattern.DOTALL);

    @TempDir
    private Path folder;

    @Test
    void everyStepPrintsWhatThePageShows() throws Exception {
        Matcher step = STEP.matcher(Files.readString(Path.of("docs/tutorial.md")));
        int steps = 0;
        while (step.find()) {
            String[] words = Arrays.stream(ShellWords.of(step.group(1)))
                    .map(word -> word.matches("\\w+\\.(yaml|json|png|html)")
                            ? folder.resolve(word).toString()
                            : word)
                    .toArray(String[]::new);
            Run run = Run.of(words);
            assertThat(run.code())
                    .as(run.errors())
                    .isEqualTo(step.group(2) == null ? 0 : Integer.parseInt(step.group(2)));
            String printed = oneSpaced(run.output().replace(folder + "/", ""));
            List<String> excerpts = Pattern.compile("^\\.\\.\\.$", Pattern.MULTILINE)
                    .splitAsStream(step.group(3))
                    .map(String::strip)
                    .filter(text -> !text.isEmpty())
                    .toList();
            assertThat(excerpts).isNotEmpty();
            excerpts.forEach(text -> assertThat(printed).contains(oneSpaced(text)));
            steps++;
        }
        assertThat(steps).isEqualTo(7);
        assertThat(PagePictures.hold(Path.of("docs/tutorial.md"), folder)).isEqualTo(1);
    }

    /** Columns are as wide as the longest entry, of which the page shows only some. */
    private static String oneSpaced(String text) {
        return text.replaceAll(" +", " ").replaceAll("-{3,}", "---");
    }
}
