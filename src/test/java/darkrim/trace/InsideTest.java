package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Rays that start on a facet: from the inside of a closed solid none escapes, from the outside of a convex one none is caught. */
class InsideTest {
    private static final int RAYS = 100_000;

    private final Ray ray = new Ray();

    @ParameterizedTest
    @MethodSource("darkrim.trace.Solid#all")
    void aRayThatBouncesAboutInsideNeverEscapes(Solid solid) {
        FacetTree tree = solid.tree();
        StartPoints starts = new StartPoints(solid.flat(), tree);
        SplittableRandom random = new SplittableRandom(23);
        double[] start = solid.inside();
        double[] way = Turn.direction(random);
        int plane = Ray.NO_PLANE;
        int escaped = 0;
        for (int i = 0; i < RAYS; i++) {
            ray.set(start[0], start[1], start[2], way[0], way[1], way[2], Double.POSITIVE_INFINITY, plane);
            int facet = tree.nearest(ray);
            if (facet < 0) {
                escaped++;
                start = solid.inside();
                plane = Ray.NO_PLANE;
                continue;
            }
            start = new double[3];
            starts.place(facet, ray.weightA(), ray.weightB(), false, start);
            plane = facet;
            way = nextWay(solid, facet, start, random);
        }
        System.out.printf("Inside %s: %d of %d rays escaped%n", solid, escaped, RAYS);
        assertThat(escaped).isZero();
    }

    @ParameterizedTest
    @MethodSource("darkrim.trace.Solid#all")
    void aRayThatLeavesAConvexSolidMeetsNothing(Solid solid) {
        FacetTree tree = solid.tree();
        StartPoints starts = new StartPoints(solid.flat(), tree);
        SplittableRandom random = new SplittableRandom(29);
        double[] start = new double[3];
        int caught = 0;
        for (int i = 0; i < RAYS; i++) {
            int facet = random.nextInt(solid.facets().length);
            // Every third start as near to an edge as can be, every third in a corner.
            double a = i % 3 == 0 ? random.nextDouble() : 0;
            double b = i % 3 == 1 ? 0 : (1 - a) * random.nextDouble();
            starts.place(facet, a, b, true, start);
            double[] n = solid.normal(facet);
            double[] way = Turn.direction(random);
            double along = Turn.dot(way, n);
            double sign = Math.signum(along);
            ray.set(
                    start[0],
                    start[1],
                    start[2],
                    sign * way[0],
                    sign * way[1],
                    sign * way[2],
                    Double.POSITIVE_INFINITY,
                    facet);
            if (tree.blocked(ray)) {
                caught++;
            }
        }
        System.out.printf("Outside %s: %d of %d rays met the solid they left%n", solid, caught, RAYS);
        assertThat(caught).isZero();
    }

    /**
     * Into the solid: every other way to an edge or corner, the others even over the half space. A way that sinks below the facet by less
     * than rounding turns the facet, 64 unit roundoffs of the bound over its height, is on no side of it.
     */
    private static double[] nextWay(Solid solid, int facet, double[] start, SplittableRandom random) {
        while (true) {
            double[] way =
                    random.nextBoolean() ? Turn.unit(Turn.minus(solid.onEdge(random), start)) : Turn.direction(random);
            double along = Turn.dot(way, solid.normal(facet));
            if (along < -64 * 0x1p-53 * 1000 / solid.height(facet)) {
                return way;
            }
        }
    }
}
