package darkrim.cli;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** {@code --only} and {@code --hide}: which surfaces are drawn or written. */
final class ChosenSurfaces {
    @Option(
            names = "--only",
            paramLabel = "PATTERN",
            order = -27,
            description = "Take only these surfaces; may be repeated.")
    private List<String> only;

    @Option(names = "--hide", paramLabel = "PATTERN", order = -26, description = "Leave these out; may be repeated.")
    private List<String> hide;

    /** Whether a surface is one of them. */
    boolean holds(String surface) {
        return patterns("--only", only).map(all -> all.selects(surface)).orElse(true)
                && !patterns("--hide", hide).map(all -> all.selects(surface)).orElse(false);
    }

    /** What is wrong with the patterns. */
    List<String> problems(Scene scene) {
        List<String> problems = new ArrayList<>();
        patterns("--only", only).flatMap(all -> all.problem(scene)).ifPresent(problems::add);
        patterns("--hide", hide).flatMap(all -> all.problem(scene)).ifPresent(problems::add);
        if (problems.isEmpty() && scene.surfaces().stream().map(Surface::name).noneMatch(this::holds)) {
            problems.add("--only and --hide leave no surface, expected one at least");
        }
        return problems;
    }

    private static Optional<SurfacePatterns> patterns(String option, List<String> patterns) {
        return Optional.ofNullable(patterns).map(all -> new SurfacePatterns(option, all));
    }
}
