package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.present.json.JsonResult;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.verdict.Watch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SavedFactsTest {
    private static CheckResult result;

    @TempDir
    private Path folder;

    @BeforeAll
    static void check() throws Exception {
        result = Check.of(
                Path.of("geometries/part-box.yaml"),
                new Effort(1, Optional.empty(), Optional.of(200_000L)),
                Watch.NONE);
    }

    private Path saved() throws Exception {
        return Files.writeString(folder.resolve("result.json"), JsonResult.of(result, "1"));
    }

    @Test
    void whatIsReadBackIsWhatTheCheckFound() throws Exception {
        Facts read = SavedFacts.read(saved(), result.layout().source().sha256());
        Facts found = Facts.of(result, "");
        assertThat(read.verdict()).isEqualTo(found.verdict());
        assertThat(read.requirements()).isEqualTo(found.requirements());
        assertThat(read.surfaces().keySet()).isEqualTo(found.surfaces().keySet());
        found.surfaces().forEach((name, facts) -> {
            SurfaceFacts back = read.surfaces().get(name);
            assertThat(back.judged()).as(name).isEqualTo(facts.judged());
            assertThat(back.paths()).as(name).isEqualTo(facts.paths());
            assertThat(back.direct().words()).as(name).isEqualTo(facts.direct().words());
            assertThat(back.onceReflected().value())
                    .as(name)
                    .isCloseTo(facts.onceReflected().value(), within(1e-15));
        });
    }

    @Test
    void theResultOfAnotherLayoutIsRefused() throws Exception {
        Path file = saved();
        assertThatThrownBy(() -> SavedFacts.read(file, "0"))
                .isInstanceOf(SavedFacts.Unusable.class)
                .hasMessageContaining("another layout");
    }

    @Test
    void whatIsNoResultIsRefusedInOneLine() throws Exception {
        for (String text : new String[] {"", "{", "[]", "{\"format_version\": 1}"}) {
            Path file = Files.writeString(folder.resolve("wrong.json"), text);
            assertThatThrownBy(() -> SavedFacts.read(file, ""))
                    .isInstanceOf(SavedFacts.Unusable.class)
                    .message()
                    .hasLineCount(1);
        }
        assertThatThrownBy(() -> SavedFacts.read(folder.resolve("none.json"), ""))
                .isInstanceOf(SavedFacts.Unusable.class);
    }
}
