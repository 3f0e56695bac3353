package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.present.Ink;
import darkrim.present.TextReport;
import darkrim.present.json.JsonResult;
import darkrim.present.json.SavedResult;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.CoarseHood;
import darkrim.study.Effort;
import darkrim.study.irradiance.DarkProof;
import darkrim.verdict.Watch;
import darkrim.view.parts.Stage;
import darkrim.view.parts.Stages;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SavedFactsTest {
    private static CheckResult result;

    @TempDir
    private Path folder;

    @BeforeAll
    static void check(@TempDir Path folder) throws Exception {
        Path layout = Files.writeString(
                folder.resolve("box.yaml"),
                Files.readString(Path.of("geometries/part-box.yaml"))
                        + "  whole: {surfaces: floor/front, pupil_seen: {at_least: 0.5}}\n");
        result = Check.of(layout, new Effort(1, Optional.empty(), Optional.of(200_000L)), Watch.NONE);
    }

    private static Stage stage() throws Exception {
        return Stage.of(result.layout(), new Findings());
    }

    private Path saved() throws Exception {
        return Files.writeString(folder.resolve("result.json"), JsonResult.of(result, "1"));
    }

    @Test
    void whatIsReadBackIsWhatTheCheckFound() throws Exception {
        Facts read = SavedFacts.read(saved(), stage());
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
    void eachRequirementHasTheLimitAndTheValueThatACheckPrints() {
        String printed = new TextReport("1", Ink.PLAIN, false).of(result);
        for (Facts.RequirementFact fact : Facts.of(result, "").requirements()) {
            assertThat(fact.value()).as(fact.name()).isNotEmpty();
            assertThat(fact.margin()).as(fact.name()).isNotEmpty();
            assertThat(printed)
                    .containsPattern("(?m)^" + Pattern.quote(fact.name()) + " .*" + Pattern.quote(fact.limit()) + " .*"
                            + Pattern.quote(fact.value()));
        }
    }

    @Test
    void whatIsDarkBehindFacetsOnlyIsReadBackSoFromEarlierFilesToo() throws Exception {
        CheckResult doubted = CoarseHood.check("chord: 30", "{shelf,sill}/outside", "none");
        Stage hood = Stage.of(doubted.layout(), new Findings());
        Facts found = Facts.of(doubted, "");
        String json = JsonResult.of(doubted, "1");
        for (String text : new String[] {json, json.replace("dark_behind_facets", "proved_dark")}) {
            Facts read = SavedFacts.read(Files.writeString(folder.resolve("doubt.json"), text), hood);
            assertThat(read.requirements()).isEqualTo(found.requirements());
            for (Facts facts : new Facts[] {found, read}) {
                assertThat(facts.surfaces().get("shelf/outside").direct().words())
                        .isEqualTo("dark behind the facets");
                assertThat(facts.surfaces().get("shelf/outside").proof()).isEqualTo(DarkProof.BEHIND_FACETS);
            }
        }
    }

    @Test
    void theResultOfAnotherLayoutIsRefused() throws Exception {
        Path file = saved();
        Stage other = Stages.of("nightglow-b.yaml");
        assertThatThrownBy(() -> SavedFacts.read(file, other))
                .isInstanceOf(SavedResult.Unusable.class)
                .hasMessageContaining("another layout");
    }

    @Test
    void whatIsNoResultIsRefusedInOneLine() throws Exception {
        Stage stage = stage();
        for (String text : new String[] {"", "{", "[]", "{\"format_version\": 1}"}) {
            Path file = Files.writeString(folder.resolve("wrong.json"), text);
            assertThatThrownBy(() -> SavedFacts.read(file, stage))
                    .isInstanceOf(SavedResult.Unusable.class)
                    .message()
                    .hasLineCount(1);
        }
        assertThatThrownBy(() -> SavedFacts.read(folder.resolve("none.json"), stage))
                .isInstanceOf(SavedResult.Unusable.class);
    }
}
