package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class SectionCommandTest {
    private static final String LAYOUT = "geometries/nightglow-b.yaml";

    @TempDir
    Path folder;

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void allThreeFilesAreWrittenAndTheReportSaysWhereRaysLand() throws Exception {
        Run run =
                Run.of("section", LAYOUT, "--plane", "x=20.1", "-o", at("s.svg"), "-o", at("s.pdf"), "-o", at("s.dxf"));
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.output()).contains("light ends", "mosaic/die[2,2]/rim/+y", "38.9  0");
        assertThat(run.output().lines()).allMatch(line -> line.length() <= 100);
        assertThat(Files.readString(Path.of(at("s.svg")))).startsWith("<?xml").contains("Revision B");
        assertThat(Files.readString(Path.of(at("s.dxf")))).contains("AC1009").endsWith("EOF\n");
        assertThat(Files.readAllBytes(Path.of(at("s.pdf"))))
                .startsWith("%PDF".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    }

    @Test
    void anyPlaneIsGivenByAPointAndANormal() {
        Run run = Run.of("section", LAYOUT, "--through", "20,20,0", "--normal", "1,1,0", "-o", at("s.svg"));
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.output()).contains("through (20, 20, 0) mm, seen against (1, 1, 0)");
    }

    @Test
    void whatCannotBeDrawnIsSaidAndNothingIsWritten() throws Exception {
        Run missing = Run.of("section", LAYOUT, "--through", "0,0,0", "-o", at("s.bmp"));
        assertThat(missing.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(missing.errors())
                .contains("expected a name that ends in", "--normal X,Y,Z is missing, expected it beside --through");
        Run outside = Run.of("section", LAYOUT, "--plane", "x=500", "-o", at("s.svg"));
        assertThat(outside.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(outside.errors()).contains("the plane x = 500 mm cuts no part");
        Run none = Run.of("section", LAYOUT, "--through", "0,0,0", "--normal", "0,0,0", "-o", at("s.svg"));
        assertThat(none.errors()).contains("--normal has no direction");
        Run words = Run.of("section", LAYOUT, "--through", "0,a,0", "--normal", "0,0,1", "-o", at("s.svg"));
        assertThat(words.errors()).contains("expected three numbers");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void aFileThatIsThereIsKept() throws Exception {
        Files.writeString(Path.of(at("s.svg")), "mine");
        assertThat(Run.of("section", LAYOUT, "--plane", "x=20.1", "-o", at("s.svg"))
                        .code())
                .isEqualTo(ExitCode.UNUSABLE);
        assertThat(Path.of(at("s.svg"))).hasContent("mine");
    }

    /** A section samples nothing, so that it has nothing to say against a verdict: the check of this layout, which fails, does not either. */
    @Test
    void itWarnsOfNoLightThatTheCheckDoesNotWarnOf() {
        Run section = Run.of("section", LAYOUT, "--plane", "x=20.1", "-o", at("s.svg"));
        assertThat(section.code()).as(section.errors()).isZero();
        assertThat(section.errors()).doesNotContain("reflected-twice");
    }

    /** Read by another library: each row is a ray; landings are those of the report, rooms those of the check. */
    @Test
    void theRaysAreATableToo() throws Exception {
        Run run = Run.of(
                "section",
                LAYOUT,
                "--plane",
                "x=20.1",
                "-o",
                at("s.svg"),
                "--csv",
                at("s.csv"),
                "--json",
                at("s.json"));
        assertThat(run.code()).as(run.errors()).isZero();
        List<CSVRecord> records = MapsCommandTest.records(Path.of(at("s.csv")));
        assertThat(records).hasSize(12);
        JsonNode rows = JsonMapper.builder()
                .build()
                .readTree(Files.readString(Path.of(at("s.json"))))
                .get("rows");
        for (int i = 0; i < records.size(); i++) {
            CSVRecord record = records.get(i);
            assertThat(record.get("landing across [mm]")).isEqualTo(record.get("landing y [mm]"));
            assertThat(Double.parseDouble(record.get("landing y [mm]")))
                    .isEqualTo(rows.get(i).get("landing_y_mm").asDouble());
            assertThat(run.output()).contains(record.get("lands on"));
            assertThat(Double.parseDouble(record.get("room inward [mm]"))).isBetween(0.1, 0.11);
        }
    }
}
