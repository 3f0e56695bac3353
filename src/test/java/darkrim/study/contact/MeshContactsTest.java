package darkrim.study.contact;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.study.Check;
import darkrim.study.PlacedScene;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Gaps beside blocks from a file, 10 mm wide. */
class MeshContactsTest {
    @TempDir
    Path folder;

    private List<String> gaps(String parts) throws IOException, UnusableInput {
        Files.copy(Path.of("src/test/resources/meshes/block.stl"), folder.resolve("block.stl"));
        Path file = Files.writeString(
                folder.resolve("blocks.yaml"), """
                title: Blocks
                beam: {pupil: {shape: disc, diameter: 45, distance: 320}}
                parts:
                  screen: {kind: rectangle, width: 4, depth: 4, at: [0, 0, -5]}
                %s
                requirements:
                  dark: {surfaces: "screen/back", direct: none}
                """.formatted(parts.indent(2).stripTrailing()));
        Findings findings = new Findings();
        PlacedScene.of(Check.readable(file, findings), findings, Watch.NONE);
        return findings.sorted().stream()
                .filter(finding -> finding.code().equals("narrow-gap"))
                .map(Finding::message)
                .toList();
    }

    @Test
    void aGapBetweenTwoCopiesIsToldOnce() throws IOException, UnusableInput {
        assertThat(gaps("block: {kind: mesh, file: block.stl, unit: mm, least_gap: 0.1,"
                        + " repeat: {count: [3, 1], step: [10.05, 20]}}"))
                .hasSize(2)
                .allSatisfy(told -> assertThat(told).contains("leave a gap of 0.05 mm"));
    }

    @Test
    void ofTwoMeshesOneWarningTellsWhatBothAskFor() throws IOException, UnusableInput {
        String one = "one: {kind: mesh, file: block.stl, unit: mm, least_gap: %s}\n";
        String other = "other: {kind: mesh, file: block.stl, unit: mm, least_gap: 0.1, at: [10.05, 0, 0]}";
        assertThat(gaps(one.formatted("0.2") + other))
                .singleElement()
                .asString()
                .contains("'least_gap' of 0.2 mm of part one and of 0.1 mm of part other:");
    }

    @Test
    void whatTheFirstDoesNotAskForTheSecondTells() throws IOException, UnusableInput {
        String one = "one: {kind: mesh, file: block.stl, unit: mm, least_gap: 0.01}\n";
        String other = "other: {kind: mesh, file: block.stl, unit: mm, least_gap: 0.1, at: [10.05, 0, 0]}";
        assertThat(gaps(one + other)).singleElement().asString().contains("'least_gap' of 0.1 mm");
    }
}
