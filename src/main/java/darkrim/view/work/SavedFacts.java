package darkrim.view.work;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Place;
import darkrim.layout.Requirement;
import darkrim.layout.ThermalShape;
import darkrim.present.Values;
import darkrim.present.json.SavedDarkness;
import darkrim.present.json.SavedResult;
import darkrim.scene.Surface;
import darkrim.verdict.Evidence;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import darkrim.view.parts.Stage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tools.jackson.databind.JsonNode;

/** Reads back what {@code check --json} wrote, as docs/result.schema.json describes it, in the words of the window. */
final class SavedFacts {
    private final Stage stage;
    private final JsonNode root;

    private SavedFacts(Stage stage, JsonNode root) {
        this.stage = stage;
        this.root = root;
    }

    /**
     * Reads a file.
     *
     * @param file the file
     * @param stage the layout that is shown
     * @throws SavedResult.Unusable if it is no result, or that of another layout
     */
    static Facts read(Path file, Stage stage) throws SavedResult.Unusable {
        JsonNode root = SavedResult.read(file, stage.layout());
        try {
            return new SavedFacts(stage, root)
                    .facts(file + " (sampled with seed "
                            + root.at("/sampling/seed").asString("?") + ")");
        } catch (RuntimeException incomplete) {
            throw SavedResult.Unusable.notWhole();
        }
    }

    private Facts facts(String source) {
        List<RequirementResult> results = new ArrayList<>();
        root.path("requirements").forEach(requirement -> results.add(result(requirement)));
        double confidence = root.at("/sampling/confidence").asDouble(0.999);
        Map<String, List<Judged>> judged = RequirementWords.judged(results, confidence);
        Map<String, List<PathFact>> paths = new HashMap<>();
        for (JsonNode path : root.path("light_paths")) {
            paths.computeIfAbsent(path.path("receiver").asString(), name -> new ArrayList<>())
                    .add(new PathFact(
                            path.path("via").asString(),
                            path.path("by").asString(),
                            path.path("share").asDouble(),
                            new Reading(
                                    path.path("mean").asDouble(), SavedResult.number(path.path("standard_error")))));
        }
        SavedDarkness darkness = new SavedDarkness(root);
        Map<String, SurfaceFacts> surfaces = new HashMap<>();
        Map<String, JsonNode> byName = new HashMap<>();
        for (JsonNode surface : root.path("surfaces")) {
            String name = surface.path("name").asString();
            byName.put(name, surface);
            surfaces.put(
                    name,
                    new SurfaceFacts(
                            Reading.proved(darkness.of(surface))
                                    .orElseGet(() -> Reading.of(SavedResult.estimate(surface.path("direct")))),
                            Reading.of(SavedResult.estimate(surface.path("once_reflected"))),
                            judged.getOrDefault(name, List.of()),
                            paths.getOrDefault(name, List.of())));
        }
        boolean searched = !root.at("/margins/which").asString("none").equals("none");
        List<Facts.RequirementFact> requirements = results.stream()
                .map(result -> RequirementWords.fact(
                        result,
                        outcome -> value(outcome, byName.get(outcome.surface().name())),
                        RequirementWords.margin(result, stage.scene(), searched)))
                .toList();
        List<String> warnings = new ArrayList<>();
        root.path("warnings").forEach(warning -> warnings.add(warning(warning)));
        return new Facts(source, verdict(root.path("verdict")), requirements, surfaces, warnings, "");
    }

    private static String value(Outcome outcome, JsonNode surface) {
        JsonNode darkness = surface.path("darkness");
        return Values.of(
                outcome,
                darkness.isObject() ? Optional.of(evidence(darkness)) : Optional.empty(),
                SavedResult.estimate(surface.path("direct")));
    }

    private static String warning(JsonNode warning) {
        JsonNode at = warning.path("place");
        Place place = new Place(
                at.path("file").asString(""),
                at.path("line").asInt(0),
                at.path("column").asInt(0));
        return Finding.warning(
                        warning.path("code").asString(""),
                        place,
                        warning.path("message").asString(""))
                .toString();
    }

    /** The layout is the same byte for byte, and so it asks the same. */
    private RequirementResult result(JsonNode node) {
        Requirement requirement = stage.layout().requirements().stream()
                .filter(each -> each.name().equals(node.path("name").asString()))
                .findFirst()
                .orElseThrow();
        List<Outcome> outcomes = new ArrayList<>();
        node.path("outcomes").forEach(outcome -> outcomes.add(outcome(outcome)));
        return new RequirementResult(requirement, verdict(node.path("verdict")), outcomes);
    }

    private Outcome outcome(JsonNode node) {
        Surface surface = stage.scene().surface(node.path("surface").asString()).orElseThrow();
        JsonNode cell = node.path("cell");
        int number = cell.isArray()
                ? cell.get(0).asInt()
                        - 1
                        + (cell.get(1).asInt() - 1)
                                * surface.grid().orElseThrow().columns()
                : Outcome.WHOLE;
        return new Outcome(
                surface,
                number,
                verdict(node.path("verdict")),
                node.path("value").isNumber() ? node.path("value").asDouble() : Double.NaN,
                SavedDarkness.isBehindFacets(node)
                        ? behindFacets(node.path("evidence"))
                        : evidence(node.path("evidence")));
    }

    private static Evidence.DarkBehindFacets behindFacets(JsonNode node) {
        return new Evidence.DarkBehindFacets(node.path("closed_gap_mm").asDouble(), margin(node.path("clearance")));
    }

    private static Verdict verdict(JsonNode word) {
        return Verdict.valueOf(word.asString().toUpperCase(Locale.ROOT));
    }

    private static Evidence evidence(JsonNode node) {
        return switch (node.path("kind").asString()) {
            case "proved_dark" ->
                new Evidence.ProvedDark(node.path("closed_gap_mm").asDouble(), margin(node.path("clearance")));
            case "dark_behind_facets" -> behindFacets(node);
            case "ray" ->
                new Evidence.WitnessRay(
                        SavedResult.point(node.path("on_pupil_mm")),
                        SavedResult.point(node.path("on_surface_mm")),
                        margin(node.path("shadow_margin")));
            case "open_area" ->
                new Evidence.OpenArea(
                        node.path("area_mm2").asDouble(), node.path("fraction").asDouble());
            case "pupil_share" ->
                new Evidence.ExactShare(
                        node.path("at_least").asDouble(),
                        node.path("at_most").asDouble(),
                        node.path("lowest_mm").isArray()
                                ? Optional.of(SavedResult.point(node.path("lowest_mm")))
                                : Optional.empty(),
                        hiddenBy(node.path("hidden_by")));
            case "proved_bound" -> new Evidence.ProvedBound(node.path("at_most").asDouble());
            case "sampled" ->
                new Evidence.Sampled(
                        SavedResult.estimate(node.path("estimate")),
                        SavedResult.number(node.path("lower")),
                        SavedResult.number(node.path("upper")),
                        node.path("risk").asDouble(),
                        node.path("looks").asInt());
            case "distance" -> distance(node);
            default -> throw new IllegalArgumentException("unknown evidence");
        };
    }

    /** Results of earlier versions have no such names. */
    private static List<String> hiddenBy(JsonNode names) {
        return names.isArray() ? names.valueStream().map(JsonNode::asString).toList() : List.of();
    }

    private static Evidence.Distance distance(JsonNode node) {
        JsonNode raised = node.path("before_the_end_of_the_way_mm");
        return new Evidence.Distance(
                node.path("mm").asDouble(),
                ThermalShape.valueOf(node.path("shape").asString().toUpperCase(Locale.ROOT)),
                node.path("first").asString(),
                SavedResult.point(node.path("on_first_mm")),
                node.path("second").asString(),
                SavedResult.point(node.path("on_second_mm")),
                raised.isNumber() ? OptionalDouble.of(raised.asDouble()) : OptionalDouble.empty(),
                node.path("overlap").asBoolean(),
                node.path("taken_off_mm").asDouble());
    }

    private static Optional<LightMargin> margin(JsonNode node) {
        return node.isObject()
                ? Optional.of(new LightMargin(
                        node.path("mm").asDouble(),
                        node.path("at_least").asBoolean(),
                        node.path("set_by").isNull() ? "" : node.path("set_by").asString(""),
                        node.path("at_mm").isArray()
                                ? Optional.of(SavedResult.point(node.path("at_mm")))
                                : Optional.empty()))
                : Optional.empty();
    }
}
