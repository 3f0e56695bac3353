package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Two shelves below a mesh whose facets may lie some way from the curved surfaces they stand for; its top is 170 mm below the pupil. */
public final class CoarseHood {
    /** Beside the file of the mesh. */
    public static final String NAME = "geometries/step/l.yaml";

    private CoarseHood() {}

    /**
     * The layout.
     *
     * @param mesh what is said of the facets, such as {@code chord: 30}
     * @param surfaces of which direct light is asked
     * @param direct what is asked of it
     */
    public static String text(String mesh, String surfaces, String direct) {
        return """
                title: t
                dimensions: {top: 1 mm}
                finishes: {black: {diffuse: 0.04}}
                beam: {pupil: {shape: disc, diameter: 30, distance: 200}}
                parts:
                  shelf: {kind: tube, inner_diameter: 42, outer_diameter: 46, base: 0, height: top, finish: black}
                  sill: {kind: tube, inner_diameter: 42, outer_diameter: 46, base: -3, height: 1, finish: black}
                  hood: {kind: mesh, file: hood.stl, unit: mm, %s, finish: black}
                requirements: {dark: {surfaces: "%s", direct: %s}}
                """.formatted(mesh, surfaces, direct);
    }

    /** What a check without samples finds. */
    public static CheckResult check(String mesh, String surfaces, String direct) throws UnusableInput {
        LayoutReading reading =
                LayoutReader.read(NAME, text(mesh, surfaces, direct).getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return Check.of(
                reading.layout().orElseThrow(),
                new Findings(),
                new Effort(2, Optional.empty(), Optional.of(0L), MarginScope.NONE),
                Watch.NONE);
    }
}
