package darkrim.present.json;

import darkrim.light.Estimate;
import darkrim.light.Reflector;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.CheckedLight.OnSurface;
import darkrim.study.irradiance.PlacedLayout;
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
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads back, as far as pictures need it, what {@code check --json} wrote; docs/result.schema.json describes the file. */
public final class SavedCheck {
    private static final int FORMAT_VERSION = 1;

    private final PlacedLayout placed;
    private final JsonNode root;

    private SavedCheck(PlacedLayout placed, JsonNode root) {
        this.placed = placed;
        this.root = root;
    }

    /** Why a file cannot be used; the message is for the user. */
    public static final class Unusable extends Exception {
        private static final long serialVersionUID = 1L;

        Unusable(String why) {
            super(why);
        }
    }

    /**
     * Reads a result.
     *
     * @param file the file
     * @param placed the layout, which must be the one that the result is about, byte for byte
     * @throws Unusable if the file cannot be read, is no such result, or that of another layout
     */
    public static CheckedLight read(Path file, PlacedLayout placed) throws Unusable {
        JsonNode root;
        try {
            root = JsonMapper.shared().readTree(Files.readAllBytes(file));
        } catch (IOException unreadable) {
            throw new Unusable("the file cannot be read, expected a result that 'darkrim check --json' wrote");
        } catch (JacksonException broken) {
            throw new Unusable("the file is not JSON, expected a result that 'darkrim check --json' wrote");
        }
        if (root.path("format_version").asInt(0) != FORMAT_VERSION
                || !root.path("surfaces").isArray()
                || !root.path("requirements").isArray()) {
            throw new Unusable(
                    "expected a result that 'darkrim check --json' wrote, of format version " + FORMAT_VERSION);
        }
        if (!root.at("/layout/sha256")
                .asString("")
                .equals(placed.layout().source().sha256())) {
            throw new Unusable("this is the result of another layout or of another state of this one (SHA-256 differs),"
                    + " expected one that 'darkrim check --json' wrote for the layout as it is now");
        }
        String shape = root.at("/layout/shape").asString("");
        if (!shape.equals(
                Optional.ofNullable(ResultDocument.shape(placed.layout())).orElse(""))) {
            throw new Unusable("this is the result of the " + shape + " shape, expected that of the other"
                    + " (--warm looks at the warm shape)");
        }
        try {
            return new SavedCheck(placed, root).checked();
        } catch (RuntimeException incomplete) {
            throw new Unusable("the file is not whole, expected a result that 'darkrim check --json' wrote");
        }
    }

    private CheckedLight checked() {
        Scene scene = placed.scene();
        Map<String, Reflector> strongest = new HashMap<>();
        for (JsonNode path : root.path("light_paths")) {
            // The strongest comes first.
            Surface via = scene.surface(path.path("via").asString()).orElseThrow();
            strongest.putIfAbsent(
                    path.path("receiver").asString(),
                    new Reflector(
                            via.index(),
                            Reflector.Part.valueOf(path.path("by").asString().toUpperCase(Locale.ROOT))));
        }
        Map<String, JsonNode> byName = new HashMap<>();
        root.path("surfaces").forEach(surface -> byName.put(surface.path("name").asString(), surface));
        List<OnSurface> surfaces = new ArrayList<>();
        for (Surface surface : scene.surfaces()) {
            JsonNode found = byName.get(surface.name());
            JsonNode darkness = found.path("darkness");
            boolean ray = darkness.path("kind").asString("").equals("ray");
            surfaces.add(new OnSurface(
                    darkness.path("kind").asString("").equals("proved_dark"),
                    estimate(found.path("direct")),
                    estimate(found.path("once_reflected")),
                    ray
                            ? List.of(point(darkness.path("on_pupil_mm")), point(darkness.path("on_surface_mm")))
                            : List.of(),
                    Optional.ofNullable(strongest.get(surface.name()))));
        }
        return new CheckedLight(
                placed.layout(),
                root.at("/sampling/seed").asLong(),
                scene,
                surfaces,
                verdicts(),
                placed.warnings(),
                root.at("/sampling/stopped").asBoolean());
    }

    private Map<Integer, Verdict> verdicts() {
        Map<Integer, Verdict> verdicts = new HashMap<>();
        for (JsonNode requirement : root.path("requirements")) {
            String light = requirement.at("/condition/light").asString();
            if (light.equals("pupil_seen") || light.equals("clearance")) {
                continue;
            }
            for (JsonNode outcome : requirement.path("outcomes")) {
                Surface surface = placed.scene()
                        .surface(outcome.path("surface").asString())
                        .orElseThrow();
                String word = outcome.path("verdict").asString();
                verdicts.merge(surface.index(), Verdict.valueOf(word.toUpperCase(Locale.ROOT)), Verdict::and);
            }
        }
        return verdicts;
    }

    /** The variance follows from the standard error; what is null is not known. */
    private static Estimate estimate(JsonNode node) {
        long samples = node.path("samples").asLong();
        double error = node.path("standard_error").asDouble(0);
        double largest = node.path("largest_sample").asDouble(Double.POSITIVE_INFINITY);
        return new Estimate(samples, node.path("mean").asDouble(0), error * error * samples, largest);
    }

    private static Vector3D point(JsonNode list) {
        return Vector3D.of(
                list.get(0).asDouble(), list.get(1).asDouble(), list.get(2).asDouble());
    }
}
