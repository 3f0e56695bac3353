package darkrim.cli;

import darkrim.assembly.Selection;
import darkrim.layout.form.Wording;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Optional;

/**
 * Patterns that together select surfaces.
 *
 * @param option the option that gives them, for messages
 * @param patterns the patterns
 */
record SurfacePatterns(String option, List<String> patterns) {
    /** Copies the list. */
    SurfacePatterns {
        patterns = List.copyOf(patterns);
    }

    /** Why a pattern cannot be used with a scene, if one cannot. */
    Optional<String> problem(Scene scene) {
        for (String pattern : patterns) {
            try {
                Selection selection = Selection.of(pattern);
                if (scene.surfaces().stream().map(Surface::name).noneMatch(selection::selects)) {
                    return Optional.of(option + ": '" + Wording.shortened(pattern)
                            + "' selects no surface, expected a pattern such as 'mosaic/**/active'; "
                            + Wording.suggestion(
                                    pattern,
                                    scene.surfaces().stream().map(Surface::name).toList()));
                }
            } catch (IllegalArgumentException unreadable) {
                return Optional.of(
                        option + ": pattern '" + Wording.shortened(pattern) + "': " + unreadable.getMessage());
            }
        }
        return Optional.empty();
    }

    /** Whether one of them selects the surface of a name. */
    boolean selects(String name) {
        return patterns.stream().anyMatch(pattern -> Selection.of(pattern).selects(name));
    }
}
