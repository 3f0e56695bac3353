package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** The outline of what is seen of the pupil has the area that is told. */
class VisibleAreaTest {
    private static final Vector3D UP = Vector3D.Unit.PLUS_Z;

    @Test
    void theVisibleAreaOfPolygonsAgreesWithAnotherOverlayLibrary() {
        int judged = 0;
        for (long seed = 1; seed <= 120; seed++) {
            Scene scene = RandomScenes.scene(seed);
            VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
            SplittableRandom random = new SplittableRandom(seed);
            for (int i = 0; i < 4; i++) {
                Vector3D point = Vector3D.of(12 * random.nextDouble() - 6, 12 * random.nextDouble() - 6, 0.001);
                if (!OverlayOracle.canJudge(scene, point)) {
                    continue;
                }
                judged++;
                double expected = OverlayOracle.visibleArea(scene, point);
                double got = visible.from(point, UP).areaFraction();
                assertThat(got).as("seed %d, %s", seed, point).isCloseTo(expected, within(2e-6));
            }
        }
        assertThat(judged).isGreaterThan(300);
    }

    @Test
    void loopsForDrawingEncloseTheVisibleArea() {
        Scene scene = new TestParts()
                .sheet("knife", -90, 0.5, -90, 90, 50)
                .sheet("bar", -90, 90, 1, 2, 40)
                .build(Beam.of(TestParts.pupilAt(200, new Ring(20, 6))));
        PupilView view = new VisiblePupil(scene, TestParts.tree(scene)).from(Vector3D.ZERO, UP);
        double sum = 0;
        List<double[]> loops = new ArrayList<>(view.loops());
        for (double[] loop : loops) {
            sum += PlanarPolygons.area(loop);
        }
        assertThat(Arrays.stream(loops.get(0)).allMatch(Double::isFinite)).isTrue();
        // Arcs are drawn with a point each degree: short by 1 - sinc(1 deg) = 5e-5 at most.
        assertThat(sum / (Math.PI * (400 - 36))).isCloseTo(view.areaFraction(), within(1e-4));
    }
}
