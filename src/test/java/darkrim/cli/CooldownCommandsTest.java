package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Every command looks at the cold shape of a layout that is cooled, or with --warm at the one as drawn, and says which. */
class CooldownCommandsTest {
    /**
     * One edge over a screen: dark with the edge below about -2.3. Drawn at -2.35, and cold 30 mm x 0.386 % = 0.116 mm farther to the right.
     */
    private static final String LAYOUT = """
            title: One edge
            cooldown: {works_at: 80, material: aluminium-6061}
            dimensions:
              edge: {value: -2.35, tolerance: 0.02}
            beam:
              pupil: {shape: rectangle, width: 10, height: 10, distance: 100}
            parts:
              screen: {kind: rectangle, width: 4, depth: 4, coating_thickness: 0.1}
              baffle: {kind: rectangle, width: 60, depth: 60, at: [edge + 30, 0, 10]}
            requirements:
              dark: {surfaces: screen/front, direct: none}
              apart: {between: [screen, baffle], clearance: {at_least: 5}, while_lowered: {part: baffle, from: 20}}
            """;

    private static final String COLD = "One edge; cold shape, at 80 K\n";
    private static final String WARM = "One edge; warm shape, as drawn at 293 K\n";

    @TempDir
    Path folder;

    private String layout;

    @BeforeEach
    void write() throws IOException {
        layout = Files.writeString(folder.resolve("edge.yaml"), LAYOUT).toString();
    }

    private String file(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void aCheckJudgesColdAndTellsOfWarm() throws IOException {
        Run cold = Run.of("check", layout, "--json", file("cold.json"));
        assertThat(cold.code()).as(cold.errors()).isEqualTo(ExitCode.FAIL);
        assertThat(cold.output())
                .startsWith(COLD)
                .contains("Cool-down from 293 K to 80 K")
                .containsPattern("dark +PASS +FAIL +0\\.0\\d+ mm +-0\\.0\\d+ mm")
                // 10 mm less a coating of 0.1 mm less 5 mm.
                .containsPattern("apart +PASS +PASS +4\\.900 mm +4\\.900 mm")
                .contains("aluminium-6061: contracts by 3.86 mm a metre, known to +-4.00 %");
        assertThat(cold.output().lines()).allMatch(line -> line.length() <= 100);
        assertThat(StudySchema.problems("result.schema.json", folder.resolve("cold.json")))
                .isEmpty();
        JsonNode document = JsonMapper.shared().readTree(Files.readString(folder.resolve("cold.json")));
        assertThat(document.at("/layout/shape").asString()).isEqualTo("cold");
        assertThat(document.at("/layout/temperature_k").asDouble()).isEqualTo(80);
        assertThat(document.at("/cooldown/warm_verdict").asString()).isEqualTo("pass");
        // In place as drawn, in place cold, and on the way in.
        assertThat(document.at("/requirements/1/outcomes").size()).isEqualTo(3);
    }

    @Test
    void theShapeAsDrawnIsJudgedWhereItIsAskedFor() throws IOException {
        Run warm = Run.of("check", layout, "--warm", "--json", file("warm.json"));
        assertThat(warm.code()).as(warm.errors()).isZero();
        assertThat(warm.output()).startsWith(WARM).doesNotContain("Cool-down from");
        assertThat(StudySchema.problems("result.schema.json", folder.resolve("warm.json")))
                .isEmpty();
        Run drawn = Run.of("draw", layout, file("warm.json"), "-o", file("a.png"), "--size", "480x320");
        assertThat(drawn.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(drawn.errors()).contains("this is the result of the warm shape");
        assertThat(Run.of("draw", layout, file("warm.json"), "-o", file("a.png"), "--size", "480x320", "--warm")
                        .code())
                .isZero();
    }

    @Test
    void aSweepIsOfTheColdShape() throws IOException {
        String[] words = {"sweep", layout, "--vary", "edge = -2.5 to -2.3 step 0.1", "--json", file("s.json")};
        Run cold = Run.of(words);
        assertThat(cold.code()).as(cold.errors()).isZero();
        assertThat(cold.output()).startsWith(COLD).containsPattern("-2\\.4 +FAIL");
        assertThat(StudySchema.problems("study.schema.json", folder.resolve("s.json")))
                .isEmpty();
        Run warm = Run.of("sweep", layout, "--vary", "edge = -2.5 to -2.3 step 0.1", "--warm");
        assertThat(warm.output()).startsWith(WARM).containsPattern("-2\\.4 +PASS");
    }

    @Test
    void tolerancesAreOfTheColdShape() throws IOException {
        Run cold = Run.of("tolerance", layout, "--builds", "3", "--json", file("t.json"));
        assertThat(cold.code()).as(cold.errors()).isEqualTo(ExitCode.FAIL);
        assertThat(cold.output()).contains(COLD);
        assertThat(StudySchema.problems("tolerance.schema.json", folder.resolve("t.json")))
                .isEmpty();
        Run warm = Run.of("tolerance", layout, "--builds", "3", "--warm");
        assertThat(warm.code()).isZero();
        assertThat(warm.output()).contains(WARM);
    }

    @Test
    void adviceMakesTheColdShapePass() throws IOException {
        Run cold = Run.of("advise", layout, "--json", file("v.json"));
        assertThat(cold.code()).as(cold.output() + cold.errors()).isZero();
        assertThat(cold.output()).startsWith(COLD).contains("edge");
        JsonNode advice = JsonMapper.shared().readTree(Files.readString(folder.resolve("v.json")));
        // As drawn an edge at -2.3 would do; cold it must be 0.116 mm farther to the left.
        assertThat(advice.at("/proposal/values/edge").asDouble()).isBetween(-2.6, -2.4);
        assertThat(Run.of("advise", layout, "--warm").output()).startsWith(WARM).contains("very requirement");
    }

    @Test
    void adviceAndTolerancesKnowClearances() throws IOException {
        String text = """
                title: Lid over a post
                dimensions: {up: {value: 5 mm, tolerance: 0.1}}
                beam: {pupil: {shape: disc, diameter: 10, distance: 200}}
                parts:
                  lid:  {kind: plate, size: [40, 40], height: up, thickness: 1}
                  post: {kind: block, width: 2, depth: 2, height: 3}
                requirements:
                  gap: {between: [lid, post], clearance: {at_least: 2.05}}
                """;
        String lid = Files.writeString(folder.resolve("lid.yaml"), text).toString();
        Run advice = Run.of("advise", lid, "--json", file("l.json"));
        assertThat(advice.code()).as(advice.errors()).isZero();
        assertThat(advice.output())
                .containsPattern("gap +up +1.00 mm per mm")
                .containsPattern("gap +FAIL +PASS +-0\\.050 mm");
        assertThat(StudySchema.problems("advice.schema.json", folder.resolve("l.json")))
                .isEmpty();
        Files.writeString(folder.resolve("lid.yaml"), text.replace("2.05", "1.95"));
        Run tolerance = Run.of("tolerance", lid, "--builds", "8");
        // 0.05 mm to spare as drawn, and 0.05 too little with the lid 0.1 mm lower.
        assertThat(tolerance.code()).as(tolerance.errors()).isEqualTo(ExitCode.FAIL);
        assertThat(tolerance.output()).containsPattern("gap +0\\.05\\d* +-0\\.05\\d* +FAIL");
    }

    @Test
    void aComparisonIsOfTheColdShapesAndNamesWhatContractsInAnotherWay() throws IOException {
        String other = Files.writeString(
                        folder.resolve("invar.yaml"),
                        LAYOUT.replace("width: 60, depth: 60,", "width: 60, depth: 60, material: invar-36,"))
                .toString();
        Run better = Run.of("compare", layout, other, "--json", file("c.json"));
        assertThat(better.code()).as(better.errors()).isZero();
        assertThat(better.output())
                .contains("before   " + COLD)
                .containsPattern("how baffle contracts.*aluminium-6061.*\\s+.*invar-36");
        assertThat(StudySchema.problems("comparison.schema.json", folder.resolve("c.json")))
                .isEmpty();
        assertThat(Run.of("compare", layout, other, "--warm").output()).contains("before   " + WARM);
    }

    @Test
    void whatAPointSeesAndWhereFacesAreDependsOnTheShape() {
        Run cold = Run.of("seen-from", layout, "--at", "screen/front:1,0.5", "--samples", "1000");
        Run warm = Run.of("seen-from", layout, "--at", "screen/front:1,0.5", "--samples", "1000", "--warm");
        assertThat(cold.output()).startsWith(COLD);
        assertThat(warm.output()).startsWith(WARM);
        // 30 mm about the middle at 27.65, and 0.386 % less when cold.
        assertThat(Run.of("faces", layout, "--part", "baffle", "--warm").output())
                .contains("-2.35, -30, 10");
        assertThat(Run.of("faces", layout, "--part", "baffle").output())
                .startsWith(COLD)
                .contains("-2.234, -29.884, 10");
    }

    @Test
    void everyErrorComesAtOnceWithItsPlaceAndNothingIsWritten() throws IOException {
        Path broken = Files.writeString(
                folder.resolve("broken.yaml"),
                LAYOUT.replace("works_at: 80, material: aluminium-6061", "works_at: 2")
                        .replace("width: 4, depth: 4,", "width: 4, depth: 4, material: copper,"));
        Run run = Run.of("check", broken.toString(), "--json", file("none.json"));
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .contains("broken.yaml:2:11: the layout is cooled, but baffle states no material")
                .contains("the contraction of copper is known from 4 to 300 K");
        assertThat(folder.resolve("none.json")).doesNotExist();
    }
}
