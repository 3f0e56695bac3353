package darkrim.present.json;

import darkrim.light.Reflector;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.CheckedLight.OnSurface;
import darkrim.study.irradiance.PlacedLayout;
import darkrim.verdict.Verdict;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** Reads back, as far as pictures need it, what {@code check --json} wrote; docs/result.schema.json describes the file. */
public final class SavedCheck {
    private final PlacedLayout placed;
    private final JsonNode root;

    private SavedCheck(PlacedLayout placed, JsonNode root) {
        this.placed = placed;
        this.root = root;
    }

    /**
     * Reads a result.
     *
     * @param file the file
     * @param placed the layout, which must be the one that the result is about, byte for byte
     * @throws SavedResult.Unusable if the file cannot be read, is no such result, or that of another layout
     */
    public static CheckedLight read(Path file, PlacedLayout placed) throws SavedResult.Unusable {
        JsonNode root = SavedResult.read(file, placed.layout());
        try {
            return new SavedCheck(placed, root).checked();
        } catch (RuntimeException incomplete) {
            throw SavedResult.Unusable.notWhole();
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
        SavedDarkness saved = new SavedDarkness(root);
        List<OnSurface> surfaces = new ArrayList<>();
        for (Surface surface : scene.surfaces()) {
            JsonNode found = byName.get(surface.name());
            JsonNode darkness = found.path("darkness");
            boolean ray = darkness.path("kind").asString("").equals("ray");
            surfaces.add(new OnSurface(
                    saved.of(found),
                    SavedResult.estimate(found.path("direct")),
                    SavedResult.estimate(found.path("once_reflected")),
                    ray
                            ? List.of(
                                    SavedResult.point(darkness.path("on_pupil_mm")),
                                    SavedResult.point(darkness.path("on_surface_mm")))
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
}
