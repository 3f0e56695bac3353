package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.present.table.JunitReport;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.verdict.Watch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Tables that commands write, read back by another library. */
class TablesTest {
    private static final String LAYOUT = "geometries/nightglow-a.yaml";

    @TempDir
    Path folder;

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    private List<CSVRecord> records(String name) throws Exception {
        assertThat(Files.readString(folder.resolve(name))).endsWith("\r\n");
        return MapsCommandTest.records(folder.resolve(name));
    }

    private JsonNode json(String name) throws Exception {
        return JsonMapper.builder().build().readTree(Files.readString(folder.resolve(name)));
    }

    @Test
    void aCheckAsTableJsonAndReportOfTestsTellsTheSame() throws Exception {
        Run run = Run.of(
                "check",
                LAYOUT,
                "--samples",
                "1e6",
                "--csv",
                at("c.csv"),
                "--json",
                at("c.json"),
                "--junit",
                at("c.xml"));
        assertThat(run.code()).isEqualTo(ExitCode.FAIL);
        JsonNode requirements = json("c.json").get("requirements");
        List<CSVRecord> lines = records("c.csv");
        int outcomes = 0;
        for (JsonNode requirement : requirements) {
            for (JsonNode outcome : requirement.get("outcomes")) {
                CSVRecord line = lines.get(outcomes++);
                assertThat(line.get("requirement"))
                        .isEqualTo(requirement.get("name").asString());
                assertThat(line.get("surface")).isEqualTo(outcome.get("surface").asString());
                assertThat(line.get("verdict")).isEqualTo(outcome.get("verdict").asString());
            }
        }
        assertThat(lines).hasSize(outcomes);
        Document report = DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(folder.resolve("c.xml").toFile());
        Element suite = report.getDocumentElement();
        assertThat(suite.getTagName()).isEqualTo("testsuite");
        assertThat(suite.getAttribute("tests")).isEqualTo(String.valueOf(requirements.size()));
        int failures = 0;
        int errors = 0;
        for (int i = 0; i < requirements.size(); i++) {
            Element test = (Element) suite.getElementsByTagName("testcase").item(i);
            String verdict = requirements.get(i).get("verdict").asString();
            assertThat(test.getAttribute("name"))
                    .isEqualTo(requirements.get(i).get("name").asString());
            assertThat(test.getElementsByTagName("failure").getLength()).isEqualTo(verdict.equals("fail") ? 1 : 0);
            assertThat(test.getElementsByTagName("error").getLength()).isEqualTo(verdict.equals("undecided") ? 1 : 0);
            failures += verdict.equals("fail") ? 1 : 0;
            errors += verdict.equals("undecided") ? 1 : 0;
        }
        assertThat(failures).isPositive();
        assertThat(suite.getAttribute("failures")).isEqualTo(String.valueOf(failures));
        assertThat(suite.getAttribute("errors")).isEqualTo(String.valueOf(errors));
    }

    /** A build must not pass on what nobody decided. */
    @Test
    void aLayoutThatAsksForNothingIsAnErrorInTheReportOfTests() throws Exception {
        CheckResult result = Check.of(
                LayoutReader.read(Path.of("geometries/part-block.yaml"))
                        .layout()
                        .orElseThrow()
                        .partsOnly(),
                new Findings(),
                new Effort(2, Optional.empty(), Optional.of(1L)),
                Watch.NONE);
        Files.writeString(folder.resolve("n.xml"), JunitReport.of(result, "test"));
        Document report = DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(folder.resolve("n.xml").toFile());
        Element suite = report.getDocumentElement();
        assertThat(suite.getAttribute("tests")).isEqualTo("1");
        assertThat(suite.getAttribute("errors")).isEqualTo("1");
        assertThat(suite.getElementsByTagName("error").getLength()).isEqualTo(1);
    }

    @Test
    void facesHaveTheAreasOfAPlateWithoutItsOpenings() throws Exception {
        assertThat(Run.of("faces", LAYOUT, "--part", "lid", "--csv", at("f.csv"), "--json", at("f.json"))
                        .code())
                .isZero();
        List<CSVRecord> lines = records("f.csv");
        JsonNode rows = json("f.json").get("rows");
        assertThat(rows.size()).isEqualTo(lines.size());
        CSVRecord top = lines.stream()
                .filter(line -> line.get("face").equals("lid/top"))
                .findFirst()
                .orElseThrow();
        assertThat(Double.parseDouble(top.get("area [mm2]"))).isCloseTo(130 * 130 - 4 * 38.6 * 38.6, within(1e-9));
        assertThat(rows.get(0).get("area_mm2").asDouble())
                .isEqualTo(Double.parseDouble(lines.get(0).get("area [mm2]")));
    }

    @Test
    void finishesVanesAndPointsAreTablesToo() throws Exception {
        assertThat(Run.of("finishes", "--csv", at("m.csv"), "--json", at("m.json"))
                        .code())
                .isZero();
        assertThat(records("m.csv"))
                .hasSize(json("m.json").get("rows").size())
                .allSatisfy(line -> assertThat(Double.parseDouble(line.get("reflectance at 80 deg")))
                        .isBetween(0.0, 1.0));
        String[] vanes = {
            "place-vanes",
            "--wall-diameter",
            "80",
            "--edge-diameter",
            "60",
            "--length",
            "300",
            "--detector-diameter",
            "20",
            "--entrance-diameter",
            "60",
            "--off-axis",
            "20",
            "--csv",
            at("v.csv"),
            "--json",
            at("v.json")
        };
        assertThat(Run.of(vanes).code()).isZero();
        assertThat(json("v.json").get("verdict").asString()).isEqualTo("pass");
        assertThat(records("v.csv"))
                .allSatisfy(line -> assertThat(line.get("edge diameter [mm]")).isEqualTo("60.0"));
        Run point = Run.of(
                "seen-from",
                LAYOUT,
                "--at",
                "mosaic/die[1,1]/edge/+x",
                "--samples",
                "1e4",
                "--csv",
                at("p.csv"),
                "--json",
                at("p.json"));
        assertThat(point.code()).as(point.errors()).isZero();
        double hidden = 0;
        for (CSVRecord line : records("p.csv")) {
            hidden += Double.parseDouble(line.get("share of the pupil"));
        }
        assertThat(hidden + json("p.json").get("share_of_pupil_sampled").asDouble())
                .isCloseTo(1, within(1e-12));
    }

    /** The second would take the place of the first. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            faces LAYOUT --csv FILE --json FILE
            faces LAYOUT --names FILE --csv FILE
            advise LAYOUT --csv FILE --json FILE
            compare LAYOUT LAYOUT --json FILE --csv FILE
            check LAYOUT --csv FILE --junit FILE
            paths LAYOUT --json FILE --csv FILE
            finishes --chart FILE --csv FILE
            seen-from LAYOUT --at mosaic/die[1,1]/active --svg FILE --json FILE
            section LAYOUT --plane x=20 -o FILE --csv FILE
            rejection LAYOUT --json FILE --chart FILE
            place-vanes --wall-diameter 80 --edge-diameter 60 --length 300 --detector-diameter 20 \
            --entrance-diameter 60 --off-axis 20 --layout FILE --csv FILE
            """)
    void twoOutputsInOneFileAreRefused(String words) {
        String[] given =
                words.replace("LAYOUT", LAYOUT).replace("FILE", at("x.svg")).split(" +");
        Run run = Run.of(given);
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .containsPattern("darkrim: -\\S+ and -\\S+ name the same file .*, expected two files; ");
        assertThat(run.output()).isEmpty();
        assertThat(folder).isEmptyDirectory();
    }
}
