package darkrim.view.work;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Place;
import darkrim.layout.Layout;
import darkrim.layout.ThermalShape;
import darkrim.light.Estimate;
import darkrim.verdict.Evidence;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Verdict;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads back what {@code check --json} wrote, as docs/result.schema.json describes it. */
public final class SavedFacts {
    private static final int FORMAT = 1;

    private final JsonNode root;
    private final double confidence;

    private SavedFacts(JsonNode root) {
        this.root = root;
        this.confidence = root.at("/sampling/confidence").asDouble(0.999);
    }

    /** Why a file cannot be used, one line. */
    public static final class Unusable extends Exception {
        private static final long serialVersionUID = 1;

        Unusable(String why) {
            super(why);
        }
    }

    /**
     * Reads a file.
     *
     * @param file the file
     * @param sha256 SHA-256 of the layout that is shown
     * @throws Unusable if it is no result, or that of another layout
     */
    public static Facts read(Path file, String sha256) throws Unusable {
        return read(file, sha256, "");
    }

    /**
     * Reads a file about one shape of a layout that is cooled.
     *
     * @param file the file
     * @param layout the layout that is shown
     * @throws Unusable if it is no result, or that of another layout or shape
     */
    static Facts read(Path file, Layout layout) throws Unusable {
        String shape = layout.cooldown()
                .map(each -> each.shape().name().toLowerCase(Locale.ROOT))
                .orElse("");
        return read(file, layout.source().sha256(), shape);
    }

    private static Facts read(Path file, String sha256, String shape) throws Unusable {
        JsonNode root;
        try {
            root = JsonMapper.shared().readTree(Files.readAllBytes(file));
        } catch (IOException | JacksonException unreadable) {
            throw new Unusable(file + ": no such file, or not JSON, expected a result written by check --json");
        }
        if (root.path("format_version").asInt(0) != FORMAT
                || !root.path("surfaces").isArray()) {
            throw new Unusable(file + ": expected a result written by check --json, format " + FORMAT);
        }
        if (!root.at("/layout/sha256").asString("").equals(sha256)) {
            throw new Unusable(file + ": is the result of another layout or revision");
        }
        if (!root.at("/layout/shape").asString("").equals(shape)) {
            throw new Unusable(file + ": is the result of another shape, expected one of the " + shape + " shape");
        }
        try {
            return new SavedFacts(root)
                    .facts(file + " (sampled with seed "
                            + root.at("/sampling/seed").asString("?") + ")");
        } catch (RuntimeException incomplete) {
            throw new Unusable(file + ": is not whole");
        }
    }

    private Facts facts(String source) {
        Map<String, List<Judged>> judged = new HashMap<>();
        List<Facts.RequirementFact> requirements = new ArrayList<>();
        for (JsonNode requirement : root.path("requirements")) {
            requirements.add(requirement(requirement, judged));
        }
        Map<String, List<PathFact>> paths = new HashMap<>();
        for (JsonNode path : root.path("light_paths")) {
            paths.computeIfAbsent(path.path("receiver").asString(), name -> new ArrayList<>())
                    .add(new PathFact(
                            path.path("via").asString(),
                            path.path("by").asString(),
                            path.path("share").asDouble(),
                            new Reading(path.path("mean").asDouble(), number(path.path("standard_error")))));
        }
        Map<String, SurfaceFacts> surfaces = new HashMap<>();
        for (JsonNode surface : root.path("surfaces")) {
            String name = surface.path("name").asString();
            boolean dark = surface.at("/darkness/kind").asString("").equals("proved_dark");
            surfaces.put(
                    name,
                    new SurfaceFacts(
                            dark ? Reading.NONE : Reading.of(estimate(surface.path("direct"))),
                            Reading.of(estimate(surface.path("once_reflected"))),
                            judged.getOrDefault(name, List.of()),
                            paths.getOrDefault(name, List.of())));
        }
        List<String> warnings = new ArrayList<>();
        root.path("warnings").forEach(warning -> warnings.add(warning(warning)));
        return new Facts(source, verdict(root.path("verdict")), requirements, surfaces, warnings, "");
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

    private Facts.RequirementFact requirement(JsonNode requirement, Map<String, List<Judged>> judged) {
        String name = requirement.path("name").asString();
        boolean keepDark = !List.of("pupil_seen", "clearance")
                .contains(requirement.at("/condition/light").asString());
        double least = Double.POSITIVE_INFINITY;
        String leastWords = "";
        for (JsonNode outcome : requirement.path("outcomes")) {
            Evidence evidence = evidence(outcome.path("evidence"));
            JsonNode cell = outcome.path("cell");
            String where = cell.isArray()
                    ? "cell (" + cell.get(0).asInt() + "," + cell.get(1).asInt() + "): "
                    : "";
            judged.computeIfAbsent(outcome.path("surface").asString(), s -> new ArrayList<>())
                    .add(Facts.judged(name, keepDark, verdict(outcome.path("verdict")), where, evidence, confidence));
            if (evidence.margin().isPresent() && evidence.margin().get().millimetres() < least) {
                least = evidence.margin().get().millimetres();
                leastWords = Facts.margin(evidence);
            }
        }
        return new Facts.RequirementFact(
                name,
                verdict(requirement.path("verdict")),
                requirement.at("/worst/surface").asString(""),
                leastWords);
    }

    private static Verdict verdict(JsonNode word) {
        return Verdict.valueOf(word.asString().toUpperCase(Locale.ROOT));
    }

    private static Evidence evidence(JsonNode node) {
        return switch (node.path("kind").asString()) {
            case "proved_dark" ->
                new Evidence.ProvedDark(node.path("closed_gap_mm").asDouble(), margin(node.path("clearance")));
            case "ray" ->
                new Evidence.WitnessRay(
                        point(node.path("on_pupil_mm")),
                        point(node.path("on_surface_mm")),
                        margin(node.path("shadow_margin")));
            case "open_area" ->
                new Evidence.OpenArea(
                        node.path("area_mm2").asDouble(), node.path("fraction").asDouble());
            case "pupil_share" ->
                new Evidence.ExactShare(
                        node.path("at_least").asDouble(),
                        node.path("at_most").asDouble(),
                        node.path("lowest_mm").isArray()
                                ? Optional.of(point(node.path("lowest_mm")))
                                : Optional.empty());
            case "proved_bound" -> new Evidence.ProvedBound(node.path("at_most").asDouble());
            case "sampled" ->
                new Evidence.Sampled(
                        estimate(node.path("estimate")),
                        number(node.path("lower")),
                        number(node.path("upper")),
                        node.path("risk").asDouble(),
                        node.path("looks").asInt());
            case "distance" ->
                new Evidence.Distance(
                        node.path("mm").asDouble(),
                        ThermalShape.valueOf(node.path("shape").asString().toUpperCase(Locale.ROOT)),
                        node.path("first").asString(),
                        point(node.path("on_first_mm")),
                        node.path("second").asString(),
                        point(node.path("on_second_mm")),
                        node.path("before_the_end_of_the_way_mm").isNumber()
                                ? OptionalDouble.of(node.path("before_the_end_of_the_way_mm")
                                        .asDouble())
                                : OptionalDouble.empty(),
                        node.path("overlap").asBoolean(),
                        node.path("taken_off_mm").asDouble());
            default -> throw new IllegalArgumentException("unknown evidence");
        };
    }

    private static Optional<LightMargin> margin(JsonNode node) {
        return node.isObject()
                ? Optional.of(new LightMargin(
                        node.path("mm").asDouble(),
                        node.path("at_least").asBoolean(),
                        node.path("set_by").isNull() ? "" : node.path("set_by").asString(""),
                        node.path("at_mm").isArray() ? Optional.of(point(node.path("at_mm"))) : Optional.empty()))
                : Optional.empty();
    }

    private static Vector3D point(JsonNode list) {
        return Vector3D.of(
                list.get(0).asDouble(), list.get(1).asDouble(), list.get(2).asDouble());
    }

    /** The variance follows from the error; what is null is unknown. */
    private static Estimate estimate(JsonNode node) {
        long samples = node.path("samples").asLong();
        double error = number(node.path("standard_error"));
        return new Estimate(
                samples,
                node.path("mean").isNull() ? 0 : node.path("mean").asDouble(),
                Double.isFinite(error) ? error * error * samples : 0,
                number(node.path("largest_sample")));
    }

    private static double number(JsonNode node) {
        return node.isNumber() ? node.asDouble() : Double.POSITIVE_INFINITY;
    }
}
