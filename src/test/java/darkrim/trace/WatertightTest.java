package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Nothing gets through a closed solid: a counted failure rate, which must be 0. */
class WatertightTest {
    /** Eight solids, from inside and from outside: a million rays in all. */
    private static final int RAYS = 62_500;

    private final Ray ray = new Ray();

    @ParameterizedTest
    @MethodSource("darkrim.trace.Solid#all")
    void noRayFromInsideEscapesThroughAnEdgeOrCorner(Solid solid) {
        FacetTree tree = solid.tree();
        SplittableRandom random = new SplittableRandom(17);
        int escaped = 0;
        for (int i = 0; i < RAYS; i++) {
            double[] from = i % 4 == 0 ? solid.inside() : solid.within(random);
            aim(from, solid.onEdge(random));
            if (tree.nearest(ray) < 0) {
                escaped++;
            }
            aim(from, solid.onEdge(random));
            if (!tree.blocked(ray)) {
                escaped++;
            }
        }
        report(solid, "from inside", escaped, 2 * RAYS);
        assertThat(escaped).isZero();
    }

    @ParameterizedTest
    @MethodSource("darkrim.trace.Solid#all")
    void noRayFromOutsideEntersThroughAnEdgeOrCorner(Solid solid) {
        FacetTree tree = solid.tree();
        SplittableRandom random = new SplittableRandom(18);
        int entered = 0;
        int shot = 0;
        while (shot < RAYS) {
            double[] target = solid.onEdge(random);
            double[] from = Turn.between(target, outside(solid, random), 1);
            if (!facesAllAround(solid, target, from)) {
                continue;
            }
            shot++;
            aim(from, target);
            boolean stopped = tree.nearest(ray) >= 0 && Math.abs(ray.distance() - 1) < 1e-9;
            if (!stopped) {
                entered++;
            }
        }
        report(solid, "from outside", entered, shot);
        assertThat(entered).isZero();
    }

    @Test
    void noRayAimedAtAnEdgeExactlyInTheMiddleOfTheNumbersLeaks() {
        // A grid of whole numbers: every edge function on an edge is exactly 0.
        Solid box = Solid.box(8, 8, 8);
        FacetTree tree = box.tree();
        int shot = 0;
        for (int x = -8; x <= 8; x++) {
            for (int y = -8; y <= 8; y++) {
                for (int sx = -1; sx <= 1; sx++) {
                    for (int sy = -1; sy <= 1; sy++) {
                        ray.set(sx, sy, -3, x - sx, y - sy, 11, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
                        assertThat(tree.nearest(ray)).isNotNegative();
                        assertThat(ray.distance()).isCloseTo(1, within(0x1p-51));
                        shot++;
                    }
                }
            }
        }
        assertThat(shot).isEqualTo(17 * 17 * 9);
    }

    @ParameterizedTest
    @CsvSource({
        "-20, 0.3, 0.5, 1, 0, 0, 17", // in the plane of the top
        "-20, 0.3, 0.5, 1, -0.0, -0.0, 17",
        "20, 0.3, -0.5, -1, 0, 0, 17", // in the plane of the bottom
        "-20, 5, 0.5, 1, 0, 0, 17", // along an edge
        "3, 5, 20, 0, 0, -1, 19.5", // along an upright edge
        "-23, -15, 0.5, 2, 2, 0, 10", // in the plane of the top, to a corner
        "0, 0, 20, -0.0, 0, -1, 19.5", // through the diagonal of the top
        "3, -20, 0, -0.0, 1, 0.0, 15" // in a side face
    })
    void aRayInAFaceMeetsTheFaceAtItsBorder(
            double x, double y, double z, double dx, double dy, double dz, double distance) {
        FacetTree tree = Solid.box(3, 5, 0.5).tree();
        ray.set(x, y, z, dx, dy, dz, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
        assertThat(tree.nearest(ray)).isNotNegative();
        assertThat(ray.distance()).isEqualTo(distance);
        ray.set(x, y, z, dx, dy, dz, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
        assertThat(tree.blocked(ray)).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"3.0000000000001", "-3.0000000000001"})
    void aRayJustBesideAFaceGoesBy(double x) {
        FacetTree tree = Solid.box(3, 5, 0.5).tree();
        ray.set(x, -20, 0, 0, 1, 0, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
        assertThat(tree.nearest(ray)).isEqualTo(-1);
    }

    private void aim(double[] from, double[] at) {
        ray.set(
                from[0],
                from[1],
                from[2],
                at[0] - from[0],
                at[1] - from[1],
                at[2] - from[2],
                Double.POSITIVE_INFINITY,
                Ray.NO_PLANE);
    }

    private static double[] outside(Solid solid, SplittableRandom random) {
        double[] way = Turn.direction(random);
        double[] c = solid.inside();
        return new double[] {c[0] + 200 * way[0], c[1] + 200 * way[1], c[2] + 200 * way[2]};
    }

    /** Whether all facets about a point of the surface show their outside, so that a ray to it cannot pass by. */
    private static boolean facesAllAround(Solid solid, double[] target, double[] from) {
        for (int f = 0; f < solid.facets().length; f++) {
            if (Math.abs(solid.height(f, target)) < 1e-9 && solid.height(f, from) < 1e-3) {
                return false;
            }
        }
        return true;
    }

    private static void report(Solid solid, String how, int failed, int shot) {
        System.out.printf("Watertight, %s, %s: %d of %d rays got through%n", solid, how, failed, shot);
    }
}
