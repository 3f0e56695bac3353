package darkrim.study.distance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class LeastDistanceTest {
    private final UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(20_261_128L);

    private double[] triangle(double spread, Vector3D at) {
        double[] t = new double[9];
        for (int k = 0; k < 9; k++) {
            t[k] = at.toArray()[k % 3] + spread * (2 * random.nextDouble() - 1);
        }
        return t;
    }

    private Vector3D point(double spread) {
        return Vector3D.of(
                spread * (2 * random.nextDouble() - 1),
                spread * (2 * random.nextDouble() - 1),
                spread * (2 * random.nextDouble() - 1));
    }

    private double[] soup(int count, double size, double spread, Vector3D at) {
        double[] all = new double[9 * count];
        for (int f = 0; f < count; f++) {
            System.arraycopy(triangle(size, at.add(point(spread))), 0, all, 9 * f, 9);
        }
        return all;
    }

    private static FacetBoxes boxes(double[] facets) {
        return new FacetBoxes(facets, new double[facets.length / 9]);
    }

    private static double[] moved(double[] facets, Vector3D by) {
        double[] all = facets.clone();
        for (int k = 0; k < all.length; k++) {
            all[k] += by.toArray()[k % 3];
        }
        return all;
    }

    /** All pairs, one after the other. */
    private static double brute(double[] a, double[] b) {
        TrianglePair pair = new TrianglePair();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < a.length; i += 9) {
            for (int j = 0; j < b.length; j += 9) {
                least = Math.min(least, Math.sqrt(pair.squared(a, i, b, j)));
            }
        }
        return least;
    }

    @Test
    void twoTrianglesAreAsFarApartAsAConvexSearchFinds() {
        int apart = 0;
        for (int i = 0; i < 150; i++) {
            double[] a = triangle(1, Vector3D.ZERO);
            double[] b = triangle(1, point(1.2));
            if (i % 5 == 0) {
                // In one plane.
                for (int k = 2; k < 9; k += 3) {
                    a[k] = 0.25;
                    b[k] = 0.25;
                }
            }
            if (i % 7 == 0) {
                // Sides that run alike.
                for (int k = 0; k < 3; k++) {
                    b[3 + k] = b[k] + (a[3 + k] - a[k]);
                }
            }
            TrianglePair pair = new TrianglePair();
            double found = Math.sqrt(pair.squared(a, 0, b, 0));
            double expected = ConvexSearch.distance(ConvexSearch.corners(a, 0), ConvexSearch.corners(b, 0));
            assertThat(found).as("pair %d", i).isCloseTo(expected, within(ConvexSearch.ERROR));
            apart += expected > 1e-6 ? 1 : 0;
        }
        assertThat(apart).isBetween(60, 140);
    }

    @Test
    void theNearestPointsLieOnTheTrianglesAsFarApartAsIsSaid() {
        for (int i = 0; i < 200; i++) {
            double[] a = triangle(1, Vector3D.ZERO);
            double[] b = triangle(1, point(2));
            Least least = LeastDistance.between(boxes(a), boxes(b));
            assertThat(least.onFirst().distance(least.onSecond())).isCloseTo(least.millimetres(), within(1e-14));
            Vector3D[] one = ConvexSearch.corners(a, 0);
            Vector3D[] two = ConvexSearch.corners(b, 0);
            assertThat(darkrim.geom.mesh.PointToTriangle.distance(least.onFirst(), one[0], one[1], one[2]))
                    .isLessThan(1e-14);
            assertThat(darkrim.geom.mesh.PointToTriangle.distance(least.onSecond(), two[0], two[1], two[2]))
                    .isLessThan(1e-14);
        }
    }

    @Test
    void aMovedTriangleComesAsNearAsASearchAlongTheWayFinds() {
        for (int i = 0; i < 24; i++) {
            double[] a = triangle(1, Vector3D.ZERO);
            double[] b = triangle(0.6, point(2.5));
            Vector3D way = i % 4 == 0 ? Vector3D.of(0, 0, -3) : point(3);
            if (i % 6 == 0) {
                // Moved within its own plane.
                way = Vector3D.of(a[3] - a[0], a[4] - a[1], a[5] - a[2]);
            }
            Least least = LeastDistance.between(boxes(a), way, boxes(b));
            double expected = ConvexSearch.swept(ConvexSearch.corners(a, 0), way, ConvexSearch.corners(b, 0));
            assertThat(least.millimetres()).as("pair %d", i).isCloseTo(expected, within(2 * ConvexSearch.ERROR));
            // Stopped where it comes nearest, it is as near as that.
            double there = brute(moved(a, way.multiply(least.travel())), b);
            assertThat(there).as("pair %d", i).isCloseTo(least.millimetres(), within(1e-12));
        }
    }

    @Test
    void aTriangleThatPassesOverOneWithoutTouchingItsRimHitsIt() {
        double[] large = {-10, -10, 0, 10, -10, 0, 0, 10, 0};
        double[] small = {-0.1, -0.1, -5, 0.1, -0.1, -5, 0, 0.1, -5};
        Least least = LeastDistance.between(boxes(large), Vector3D.of(0, 0, -10), boxes(small));
        assertThat(least.millimetres()).isZero();
        assertThat(least.travel()).isCloseTo(0.5, within(1e-15));
        Least other = LeastDistance.between(boxes(small), Vector3D.of(0, 0, 10), boxes(large));
        assertThat(other.millimetres()).isZero();
    }

    @Test
    void theTreeFindsWhatAllPairsFind() {
        for (int i = 0; i < 40; i++) {
            double[] a = soup(60, 0.3, 1.5, Vector3D.ZERO);
            double[] b = soup(45, 0.3, 1.5, Vector3D.of(3.2 + 0.05 * i, 0, 0));
            assertThat(LeastDistance.between(boxes(a), boxes(b)).millimetres()).isEqualTo(brute(a, b));
        }
    }

    @Test
    void theLeastDistanceOverAWayIsBelowThatAtEveryStopAndMetAtOne() {
        for (int i = 0; i < 15; i++) {
            double[] a = soup(30, 0.3, 1, Vector3D.of(0, 0, 6));
            double[] b = soup(30, 0.3, 1, Vector3D.of(2.6, 0.3, 0));
            Vector3D way = Vector3D.of(0.4, 0, -7);
            Least least = LeastDistance.between(boxes(a), way, boxes(b));
            for (int stop = 0; stop <= 60; stop++) {
                assertThat(brute(moved(a, way.multiply(stop / 60.0)), b))
                        .isGreaterThanOrEqualTo(least.millimetres() - 1e-13);
            }
            assertThat(brute(moved(a, way.multiply(least.travel())), b)).isCloseTo(least.millimetres(), within(1e-12));
        }
    }

    @Test
    void coatingsTakeTheirThicknessOffTheFacetsThatHaveThem() {
        double[] a = {0, 0, 0, 1, 0, 0, 0, 1, 0, 5, 0, 0, 6, 0, 0, 5, 1, 0};
        double[] b = {0, 0, 1, 1, 0, 1, 0, 1, 1, 5, 0, 1.05, 6, 0, 1.05, 5, 1, 1.05};
        FacetBoxes coated = new FacetBoxes(a, new double[] {0.02, 0.12});
        Least least = LeastDistance.between(coated, boxes(b));
        // 1.05 - 0.12 on the right is less than 1 - 0.02 on the left.
        assertThat(least.millimetres()).isCloseTo(0.93, within(1e-15));
        assertThat(least.first()).isEqualTo(1);
        assertThat(least.second()).isEqualTo(1);
        FacetBoxes thick = new FacetBoxes(a, new double[] {2, 2});
        assertThat(LeastDistance.between(thick, boxes(b)).millimetres()).isZero();
    }

    @Test
    void touchingAndCrossingAreZero() {
        double[] floor = {-1, -1, 0, 1, -1, 0, 0, 1, 0};
        double[] tip = {0, 0, 0, 0.2, 0, 1, -0.2, 0, 1};
        double[] through = {0, 0, -1, 0.2, 0, 1, -0.2, 0, 1};
        double[] edge = {0.2, 0.2, 0, -0.2, 0.2, 0, 0, 0.2, 2};
        for (double[] each : new double[][] {tip, through, edge}) {
            Least least = LeastDistance.between(boxes(floor), boxes(each));
            assertThat(least.millimetres()).isZero();
            assertThat(least.onFirst()).isEqualTo(least.onSecond());
        }
    }

    /** How long it takes is printed: it depends on the machine. */
    @Test
    void ofAHundredThousandFacetsTheNearestAreFound() {
        double[] a = sheet(158, 0);
        double[] b = sheet(158, 0.75);
        long start = System.nanoTime();
        Least least = LeastDistance.between(boxes(a), boxes(b));
        double seconds = 1e-9 * (System.nanoTime() - start);
        Least swept = LeastDistance.between(boxes(moved(a, Vector3D.of(0, 0, -5))), Vector3D.of(0, 0, 5), boxes(b));
        System.out.printf(
                "2 x %d facets: %.2f s where they stand, %.2f s along a way%n",
                a.length / 9, seconds, 1e-9 * (System.nanoTime() - start) - seconds);
        // Two wavy sheets of the same phase, one above the other: nearest where they are steep, bounded by the heights.
        assertThat(least.millimetres()).isPositive().isLessThanOrEqualTo(0.75);
        assertThat(swept.millimetres()).isCloseTo(least.millimetres(), within(1e-12));
        int[] some = random.ints(2000, 0, a.length / 9).toArray();
        double[] part = new double[9 * some.length];
        for (int i = 0; i < some.length; i++) {
            System.arraycopy(a, 9 * some[i], part, 9 * i, 9);
        }
        assertThat(least.millimetres())
                .isLessThanOrEqualTo(
                        LeastDistance.between(boxes(part), boxes(b)).millimetres());
    }

    private static double[] sheet(int side, double height) {
        double[] all = new double[18 * side * side];
        int at = 0;
        for (int i = 0; i < side; i++) {
            for (int j = 0; j < side; j++) {
                for (int[] corner : new int[][] {{0, 0}, {1, 0}, {0, 1}, {1, 0}, {1, 1}, {0, 1}}) {
                    double x = 0.4 * (i + corner[0]);
                    double y = 0.4 * (j + corner[1]);
                    all[at++] = x;
                    all[at++] = y;
                    all[at++] = height + 0.5 * Math.sin(0.3 * x) * Math.cos(0.2 * y);
                }
            }
        }
        return Arrays.copyOf(all, at);
    }
}
