package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.LayoutReader;
import darkrim.scene.DistantBody;
import darkrim.study.rejection.OrderLight;
import darkrim.study.rejection.OrderLight.Evidence;
import darkrim.study.rejection.RejectionPoint;
import darkrim.study.rejection.RejectionResult;
import darkrim.study.rejection.RejectionSettings;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What the table of a rejection curve says of all orders together. */
class RejectionReportTest {
    private static final OrderLight ONCE = new OrderLight(1, Evidence.SAMPLED, 3.63e-4, 0.15e-4, 5e-4);
    private static final OrderLight TWICE = new OrderLight(2, Evidence.SAMPLED, 1e-5, 1e-6, 2e-5);

    private static String report(OrderLight... orders) {
        var reading = LayoutReader.read("sheet.yaml", """
                title: Sheet
                beam: {pupil: {shape: disc, diameter: 30, distance: 320}}
                parts: {sheet: {kind: rectangle, width: 10, depth: 10}}
                requirements: {dark: {surfaces: "sheet/back", direct: none}}
                """.getBytes(StandardCharsets.UTF_8));
        RejectionSettings settings = new RejectionSettings(
                Optional.empty(),
                new DistantBody(0, 0, 0.53, Optional.empty()),
                OptionalDouble.of(1000),
                List.of(5.0),
                List.of(0.0),
                "sheet/front",
                2,
                8);
        RejectionPoint point = new RejectionPoint(0, 5, List.of(orders));
        return new RejectionReport("1.0")
                .of(new RejectionResult(
                        reading.layout().orElseThrow(),
                        settings,
                        1,
                        0.999,
                        List.of(),
                        List.of(point),
                        false,
                        false,
                        List.of()));
    }

    private static OrderLight noneFound(int order, double atMost) {
        return new OrderLight(order, Evidence.NONE_FOUND, 0, 0, atMost);
    }

    @Test
    void aTotalSaysHowMuchMoreThereMayBeOfWhatWasNotFound() {
        assertThat(report(noneFound(0, 3.1e-4), ONCE, TWICE))
                .containsPattern("\n +5 +\\(3\\.73 \\+- 0\\.16\\)e-4 \\+ < 3\\.10e-4 +0\\.373 \\+ < 0\\.310\n")
                .contains("'A + < B'");
        assertThat(report(noneFound(0, 3e-4), ONCE, noneFound(2, 1e-4)))
                .containsPattern("\n +5 +\\(3\\.63 \\+- 0\\.15\\)e-4 \\+ < 4\\.00e-4 +0\\.363 \\+ < 0\\.400\n");
    }

    @Test
    void aTotalIsOpenWhereNoBoundIsKnown() {
        assertThat(report(noneFound(0, 3e-4), ONCE, noneFound(2, Double.POSITIVE_INFINITY)))
                .containsPattern("\n +5 +\\(3\\.63 \\+- 0\\.15\\)e-4 \\+ \\? +0\\.363 \\+ \\?\n");
        assertThat(report(noneFound(0, 3e-4), noneFound(1, 1e-4), noneFound(2, Double.POSITIVE_INFINITY)))
                .containsPattern(" 5 +none found +none found\n");
    }

    @Test
    void aTotalOfWhatWasProvedAndFoundIsThatAlone() {
        OrderLight proved = new OrderLight(0, Evidence.PROVED, 0, 0, 0);
        assertThat(report(proved, ONCE, TWICE))
                .containsPattern("\n +5 +\\(3\\.73 \\+- 0\\.16\\)e-4 +0\\.373\n")
                .doesNotContain("'A + < B'");
    }
}
