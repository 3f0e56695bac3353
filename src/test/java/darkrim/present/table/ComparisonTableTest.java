package darkrim.present.table;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.study.Effort;
import darkrim.study.comparison.ComparisonStudy;
import darkrim.verdict.Watch;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A comparison as lines of comma-separated values. */
class ComparisonTableTest {
    @TempDir
    private Path folder;

    @Test
    void aMarginThatIsOnlyABoundIsCalledSo() throws Exception {
        String flag = """
                title: A flag
                beam:
                  pupil: {shape: disc, diameter: 40, distance: 200}
                parts:
                  screen: {kind: rectangle, width: 10, depth: 10}
                  flag: {kind: rectangle, width: 60, depth: 60, at: [0, 0, 60], turn: {about: x, by: 0}}
                requirements:
                  dark: {surfaces: "screen/front", direct: none}
                """;
        Path before = Files.writeString(folder.resolve("a.yaml"), flag);
        Path after = Files.writeString(folder.resolve("b.yaml"), flag.replace("by: 0", "by: 70"));
        String csv = CheckTables.comparison(ComparisonStudy.of(before, after, Effort.asAsked(), Watch.NONE), "1.0")
                .csv();
        // No edge is met within 20 mm before; after, the flag lets light by.
        assertThat(csv)
                .contains("before is,after is")
                .containsPattern("requirement,dark,pass,fail,20(\\.0)?,-2\\.\\d+,at least,,mm,worse");
    }
}
