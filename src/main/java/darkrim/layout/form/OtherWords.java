package darkrim.layout.form;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Words that people write for ours without a letter in common; they are suggested, not accepted. */
final class OtherWords {
    private static final Map<String, List<String>> OURS = Map.ofEntries(
            // keys
            Map.entry("radius", List.of("diameter")),
            Map.entry("inner_radius", List.of("inner_diameter")),
            Map.entry("outer_radius", List.of("outer_diameter")),
            Map.entry("position", List.of("at", "centre", "shift")),
            Map.entry("location", List.of("at", "centre", "shift")),
            Map.entry("origin", List.of("at", "centre", "shift")),
            Map.entry("offset", List.of("at", "centre", "shift")),
            Map.entry("at", List.of("centre", "shift")),
            Map.entry("z", List.of("height", "distance", "at_height", "at")),
            Map.entry("rotate", List.of("turn")),
            Map.entry("rotation", List.of("turn")),
            Map.entry("material", List.of("finish")),
            Map.entry("coating", List.of("finish")),
            Map.entry("length", List.of("depth", "height")),
            Map.entry("pitch", List.of("spacing", "pixel_pitch", "step")),
            Map.entry("number", List.of("grid", "count")),
            Map.entry("obscuration", List.of("hole")),
            Map.entry("reflectance", List.of("diffuse")),
            Map.entry("albedo", List.of("diffuse")),
            Map.entry("specular", List.of("mirror")),
            Map.entry("limit", List.of("at_most", "at_least")),
            Map.entry("type", List.of("kind", "shape")),
            Map.entry("lean", List.of("tilt")),
            Map.entry("reflected", List.of("once_reflected")),
            Map.entry("reflection", List.of("once_reflected")),
            Map.entry("scattered", List.of("once_reflected")),
            // words
            Map.entry("circle", List.of("disc")),
            Map.entry("round", List.of("disc")),
            Map.entry("annulus", List.of("disc")),
            Map.entry("ring", List.of("disc")),
            Map.entry("square", List.of("rectangle")),
            Map.entry("cylinder", List.of("tube")),
            Map.entry("pipe", List.of("tube")),
            Map.entry("cuboid", List.of("block")),
            Map.entry("sheet", List.of("rectangle")),
            Map.entry("lid", List.of("plate")),
            Map.entry("dome", List.of("sphere_cap")),
            Map.entry("dark", List.of("none")),
            Map.entry("zero", List.of("none")));

    private OtherWords() {}

    /** Our word for another, if it is one of the words that are known here. */
    static Optional<String> ours(String word, Collection<String> known) {
        return OURS.getOrDefault(word, List.of()).stream()
                .filter(known::contains)
                .findFirst();
    }
}
