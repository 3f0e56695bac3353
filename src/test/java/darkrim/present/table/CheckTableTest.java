package darkrim.present.table;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Ink;
import darkrim.present.Results;
import darkrim.present.TextReport;
import darkrim.present.json.JsonResult;
import darkrim.study.CheckResult;
import darkrim.study.journal.CsvLine;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the table of a check says of values beside which a ray or a proof decides. */
class CheckTableTest {
    private static final String NONE = "none: {surfaces: screen/front, direct: none}";
    private static final String LIMIT = "limit: {surfaces: screen/front, direct: {at_most: 0.5}}";
    private static final String BACK = "back: {surfaces: screen/back, direct: none}";
    private static final String BOUND = "bound: {surfaces: left/back, once_reflected: {at_most: 0.9}}";

    /** The columns of each requirement, which has one surface here. */
    private static Map<String, Map<String, String>> rows(CheckResult result) {
        List<String> lines = CheckTables.check(result, "0").csv().lines().toList();
        List<String> head = CsvLine.fields(lines.get(0));
        Map<String, Map<String, String>> rows = new HashMap<>();
        for (String line : lines.subList(1, lines.size())) {
            List<String> fields = CsvLine.fields(line);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < head.size(); i++) {
                row.put(head.get(i), fields.get(i));
            }
            assertThat(rows.put(fields.get(0), row)).isNull();
        }
        return rows;
    }

    /** The same light on the same surface, asked for in two ways: once a ray decides, once samples do. */
    @Test
    void theErrorStandsBesideTheValueWhateverDecides() {
        Map<String, Map<String, String>> rows = rows(Results.slit(NONE, LIMIT, BACK, BOUND));
        assertThat(rows.get("none").get("evidence")).startsWith("lit: ray");
        assertThat(rows.get("limit").get("evidence")).startsWith("between");
        assertThat(rows.get("none").get("value")).isEqualTo(rows.get("limit").get("value"));
        assertThat(rows.get("none").get("standard error"))
                .isNotEmpty()
                .isEqualTo(rows.get("limit").get("standard error"));
        double value = CsvLine.number(rows.get("none").get("value"));
        assertThat(CsvLine.number(rows.get("none").get("standard error"))).isBetween(1e-4 * value, 0.1 * value);
        // Nothing but the ray is known for certain, so that there is no interval.
        assertThat(rows.get("none").get("lower")).isEmpty();

        assertThat(rows.get("back").get("value")).isEqualTo("0.0");
        assertThat(rows.get("back").get("standard error")).isEmpty();
        assertThat(rows.get("bound").get("evidence")).contains("proved");
        assertThat(rows.get("bound").get("standard error")).isNotEmpty();
    }

    /** A lit surface for which there was no time has no value: 0 would say that it is dark. */
    @Test
    void aLitSurfaceThatWasNotMeasuredHasNoValue() {
        CheckResult result = Results.of(Results.yaml("", NONE), 1, 1);
        Map<String, String> row = rows(result).get("none");
        assertThat(row.get("verdict")).isEqualTo("fail");
        assertThat(row.get("value")).isEmpty();
        assertThat(row.get("standard error")).isEmpty();
        assertThat(JsonResult.of(result, "0").replaceAll("\\s+", "")).contains("\"verdict\":\"fail\",\"value\":null");
        assertThat(new TextReport("0", Ink.PLAIN, false).of(result)).contains("screen/front  not measured");
    }
}
