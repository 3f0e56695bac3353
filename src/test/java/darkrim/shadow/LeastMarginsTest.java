package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A plate with its edge at x = 10, 50 up, below a disc of radius 20, 200 up: all of the pupil is seen up to x = 1000 / 150, none from 16.67 on. */
class LeastMarginsTest {
    private static final double ALL = (10 * 200 - 20 * 50) / 150.0;
    private static final double NONE = (10 * 200 + 20 * 50) / 150.0;

    private static Scene scene(double... ends) {
        TestParts parts = new TestParts().sheet("plate", 10, 90, -90, 90, 50);
        for (int i = 0; i < ends.length; i++) {
            parts.sheet("face" + i, ends[i] - 2, ends[i], 10 * i - 21, 10 * i - 19, 0);
        }
        return parts.build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
    }

    private static List<List<Surface>> orders(Scene scene, int count) {
        List<Surface> faces = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            faces.add(scene.surface("face" + i).orElseThrow());
        }
        List<Surface> turned = new ArrayList<>(faces);
        Collections.reverse(turned);
        return List.of(faces, turned);
    }

    @Test
    void theLeastPupilMarginIsThatOfTheFarthestFace() {
        for (double[] margins : new double[][] {{0.5, 0.3, 0.7}, {-0.2, 0.4, -0.6}, {0.5, -0.1, 0.2}}) {
            Scene scene = scene(ALL - margins[0], ALL - margins[1], ALL - margins[2]);
            double least = Math.min(margins[0], Math.min(margins[1], margins[2]));
            for (List<Surface> order : orders(scene, 3)) {
                for (Optional<MarginGuess> guess : guesses(least)) {
                    Margins.Least found = TestParts.margins(scene)
                            .leastPupil(order, guess, () -> false)
                            .orElseThrow();
                    assertThat(found.margin().millimetres()).isCloseTo(least, within(1e-6));
                }
            }
        }
    }

    private static List<Optional<MarginGuess>> guesses(double least) {
        return List.of(Optional.empty(), Optional.of(new MarginGuess("face1", least + 0.01)));
    }

    /** What reaches 0.4 or less into the light from the dark: cut from one side. */
    @Test
    void theDeepestIntrusionIsThatOfTheFaceThatReachesFarthestIn() {
        double[] depths = {0.2, 0.4, 0.1};
        Scene scene = scene(NONE + 2 - depths[0], NONE + 2 - depths[1], NONE + 2 - depths[2]);
        for (List<Surface> order : orders(scene, 3)) {
            Margins.Least found = TestParts.margins(scene)
                    .deepestIntrusion(order, () -> false)
                    .orElseThrow();
            assertThat(found.surface().name()).isEqualTo("face1");
            assertThat(found.margin().millimetres()).isCloseTo(-0.4, within(1e-6));
        }
    }

    /** Square to the plane of grazing rays, from the far rim, at x = -20 and z = 200, to the end of the light at z = 0. */
    @Test
    void theLeastClearanceIsThatOfTheFaceNearestToTheLight() {
        double[] margins = {0.5, 0.3, 0.7};
        Scene scene = scene(NONE + 2 + margins[0], NONE + 2 + margins[1], NONE + 2 + margins[2]);
        double slope = 200 / Math.hypot(200, NONE + 20);
        for (List<Surface> order : orders(scene, 3)) {
            for (Optional<MarginGuess> guess : guesses(0.29)) {
                Margins.Least found = TestParts.margins(scene)
                        .leastClearance(order, guess, () -> false)
                        .orElseThrow();
                assertThat(found.surface().name()).isEqualTo("face1");
                // The face is narrow: the rays that graze the plate in front of it come from near the rim's middle.
                assertThat(found.margin().millimetres()).isBetween(0.3 * slope - 1e-5, 0.31);
            }
        }
    }
}
