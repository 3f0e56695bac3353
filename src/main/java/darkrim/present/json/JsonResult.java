package darkrim.present.json;

import darkrim.study.CheckResult;
import darkrim.study.advice.Advice;
import darkrim.study.comparison.Comparison;
import darkrim.study.path.PathResult;
import darkrim.study.pixel.PixelView;
import darkrim.study.rejection.RejectionResult;
import darkrim.study.star.StarScanResult;
import darkrim.study.sweep.SweepResult;
import darkrim.study.tolerance.ToleranceResult;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Writes a result as JSON, as docs/result.schema.json describes it. */
public final class JsonResult {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
            .disable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .enable(SerializationFeature.INDENT_OUTPUT)
            .build();

    private JsonResult() {}

    /**
     * What pixels see, as docs/pixel.schema.json describes it.
     *
     * @param view what they see
     * @param version version of the program
     * @return JSON, ended by a line feed
     */
    public static String of(PixelView view, String version) {
        return MAPPER.writeValueAsString(PixelDocument.of(view, version)) + "\n";
    }

    /**
     * A tolerance study, as docs/tolerance.schema.json describes it.
     *
     * @param result the study
     * @param version version of the program
     * @return JSON, ended by a line feed
     */
    public static String of(ToleranceResult result, String version) {
        return MAPPER.writeValueAsString(ToleranceDocument.of(result, version)) + "\n";
    }

    /**
     * A whole sweep, as docs/study.schema.json describes it.
     *
     * @param result the sweep
     * @param version version of the program
     * @return JSON, ended by a line feed
     */
    public static String of(SweepResult result, String version) {
        return MAPPER.writeValueAsString(SweepDocument.of(result, version)) + "\n";
    }

    /**
     * The whole result.
     *
     * @param result the result
     * @param version version of the program
     * @return JSON, ended by a line feed
     */
    public static String of(CheckResult result, String version) {
        return MAPPER.writeValueAsString(ResultDocument.of(result, version)) + "\n";
    }

    /**
     * Advice, as docs/advice.schema.json describes it.
     *
     * @param advice the advice
     * @param version version of the program
     * @return JSON, ended by a line feed
     */
    public static String of(Advice advice, String version) {
        return MAPPER.writeValueAsString(AdviceDocument.of(advice, version)) + "\n";
    }

    /**
     * A comparison, as docs/comparison.schema.json describes it.
     *
     * @param comparison the comparison
     * @param version version of the program
     * @return JSON, ended by a line feed
     */
    public static String of(Comparison comparison, String version) {
        return MAPPER.writeValueAsString(ComparisonDocument.of(comparison, version)) + "\n";
    }

    /**
     * A star scan, as docs/sources.md describes it.
     *
     * @param result the scan
     * @param version version of the program
     * @return JSON, ended by a line feed
     */
    public static String of(StarScanResult result, String version) {
        return MAPPER.writeValueAsString(StarScanDocument.of(result, version)) + "\n";
    }

    /**
     * A rejection curve, as docs/sources.md describes it.
     *
     * @param result the curve
     * @param version version of the program
     * @return JSON, ended by a line feed
     */
    public static String of(RejectionResult result, String version) {
        return MAPPER.writeValueAsString(RejectionDocument.of(result, version)) + "\n";
    }

    /**
     * Light paths, as docs/paths.schema.json describes them.
     *
     * @param result the paths
     * @param version version of the program
     * @return JSON, ended by a line feed
     */
    public static String of(PathResult result, String version) {
        return MAPPER.writeValueAsString(PathDocument.of(result, version)) + "\n";
    }
}
