package darkrim.study.vanes;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.VanesShape.Taper;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The construction against lines of sight drawn between points, for cones. */
class VaneConstructionTest {
    /** Cones that open and close, with edges along another taper. The seed is fixed; every drawn point must agree. */
    static Stream<VaneTask> cones() {
        SplittableRandom random = new SplittableRandom(20_261);
        List<VaneTask> tasks = new ArrayList<>();
        while (tasks.size() < 12) {
            double base = random.nextDouble(20, 45);
            double top = random.nextDouble(25, 70);
            double detector = random.nextDouble(3, 12);
            double entrance = top * random.nextDouble(0.6, 0.85);
            double edgeBase = base - random.nextDouble(4, 8);
            double edgeTop = top - random.nextDouble(4, 8);
            tasks.add(new VaneTask(
                    new Taper(base, top),
                    new Taper(edgeBase, edgeTop),
                    0,
                    random.nextDouble(150, 350),
                    detector,
                    entrance,
                    OptionalDouble.of(random.nextDouble(15, 40)),
                    OptionalDouble.empty(),
                    0));
        }
        return tasks.stream();
    }

    @ParameterizedTest
    @MethodSource("cones")
    void noWallPointOfAConeIsBothSeenAndLitAndEveryVaneIsNeeded(VaneTask task) {
        List<Double> heights = VaneConstruction.of(task).heights();
        assertThat(heights).isNotEmpty().hasSizeLessThan(60);
        assertThat(bothSeenAndLit(task, heights)).isZero();
        for (int i = 0; i < heights.size(); i++) {
            List<Double> without = new ArrayList<>(heights);
            without.remove(i);
            assertThat(bothSeenAndLit(task, without))
                    .as("without vane " + (i + 1))
                    .isPositive();
        }
    }

    /** What a vane hides begins above it and ends below the next; so no two stand in each other's way. */
    @Test
    void everyVaneStandsBeyondWhatTheLastOneHides() {
        for (VaneTask task : cones().toList()) {
            VaneConstruction vanes = VaneConstruction.of(task);
            for (int i = 0; i + 1 < vanes.heights().size(); i++) {
                assertThat(vanes.hiddenUpTo().get(i))
                        .isGreaterThan(vanes.heights().get(i))
                        .isLessThan(vanes.heights().get(i + 1));
            }
        }
    }

    /** Wall points, evenly spaced, that some line from the detector and some line from the entrance, at or beyond the angle, reach. */
    private static int bothSeenAndLit(VaneTask task, List<Double> heights) {
        int both = 0;
        for (int i = 0; i < 700; i++) {
            double z = task.entranceHeight() * (i + 0.5) / 700;
            if (isReached(task, heights, z, true) && isReached(task, heights, z, false)) {
                both++;
            }
        }
        return both;
    }

    /** Points of the rim of the disc, which hold the extreme ones, and two rings within. */
    private static boolean isReached(VaneTask task, List<Double> heights, double z, boolean fromEntrance) {
        double radius = fromEntrance ? task.entranceRadius() : task.detectorRadius();
        double height = fromEntrance ? task.entranceHeight() : 0;
        double tangent = Math.tan(Math.toRadians(task.offAxis().orElseThrow()));
        for (double share : new double[] {1, 0.6, 0.2}) {
            for (int k = 0; k < 180; k++) {
                double x = share * radius * Math.cos(2 * Math.PI * k / 180);
                double y = share * radius * Math.sin(2 * Math.PI * k / 180);
                double across = Math.hypot(x - task.wallAt(z), y);
                boolean counts = !fromEntrance || across >= tangent * (height - z);
                if (counts && isClear(task, heights, z, x, y, height)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether the line from the wall at (w(z), 0, z) to (x, y, height) passes every thin vane between within its edge. */
    private static boolean isClear(VaneTask task, List<Double> heights, double z, double x, double y, double height) {
        for (double vane : heights) {
            double share = (vane - z) / (height - z);
            if (share > 0 && share < 1) {
                double px = task.wallAt(z) + share * (x - task.wallAt(z));
                double py = share * y;
                if (Math.hypot(px, py) > task.edgeAt(vane) * (1 + 1e-12)) {
                    return false;
                }
            }
        }
        return true;
    }
}
