package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Nearest hits and blocked agree with a loop over all facets by another method: the plane is cut first, then the hit is judged by the signs
 * of three volumes. The two may differ only where a hit is within rounding of a facet's edge or of the end of the ray.
 */
class NearestHitTest {
    private static final int FACETS = 400;
    private static final int RAYS = 20_000;
    /** Far above rounding of either method, far below the size of anything. */
    private static final double NEAR = 1e-7;

    private final Ray ray = new Ray();

    @ParameterizedTest
    @EnumSource
    void nearestAgreesWithALoopOverAllFacets(Soup soup) {
        double[] corners = soup.facets(FACETS, 31);
        FacetTree tree = Soup.tree(corners);
        SplittableRandom random = new SplittableRandom(37);
        int met = 0;
        int doubtful = 0;
        for (int i = 0; i < RAYS; i++) {
            double[] r = Soup.ray(corners, random);
            Loop loop = Loop.over(corners, r, Double.POSITIVE_INFINITY);
            ray.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            int facet = tree.nearest(ray);
            met += facet >= 0 ? 1 : 0;
            if (loop.doubtful()) {
                doubtful++;
                continue;
            }
            assertThat(facet >= 0).as("ray %d meets something", i).isEqualTo(loop.distance < Double.POSITIVE_INFINITY);
            if (facet >= 0) {
                assertThat(Math.abs(ray.distance() - loop.distance))
                        .as("ray %d", i)
                        .isLessThan(loop.tolerance);
                assertThat(Loop.volumesAgree(corners, facet, r, 1e-6))
                        .as("ray %d, facet %d", i, facet)
                        .isTrue();
            }
        }
        System.out.printf(
                "Loop over all facets, %s: %d of %d rays met a facet, %d doubtful%n", soup, met, RAYS, doubtful);
        assertThat(met).isGreaterThan(RAYS / 10);
        assertThat(doubtful).as("rays left out").isLessThan(RAYS / 2);
    }

    @ParameterizedTest
    @EnumSource
    void blockedAgreesWithALoopOverAllFacets(Soup soup) {
        double[] corners = soup.facets(FACETS, 41);
        FacetTree tree = Soup.tree(corners);
        SplittableRandom random = new SplittableRandom(43);
        int blocked = 0;
        int judged = 0;
        for (int i = 0; i < RAYS; i++) {
            double[] r = Soup.ray(corners, random);
            double length = 2 * random.nextDouble();
            Loop loop = Loop.over(corners, r, length);
            if (loop.doubtful()) {
                continue;
            }
            ray.set(r[0], r[1], r[2], r[3], r[4], r[5], length, Ray.NO_PLANE);
            boolean stopped = tree.blocked(ray);
            assertThat(stopped).as("ray %d", i).isEqualTo(loop.distance < length);
            judged++;
            blocked += stopped ? 1 : 0;
        }
        assertThat(blocked).isBetween(judged / 20, judged);
        assertThat(judged).isGreaterThan(RAYS / 2);
    }

    /** The plain loop. */
    private static final class Loop {
        /** The nearest sure hit. */
        private double distance = Double.POSITIVE_INFINITY;
        /** How well it is known: the plane of a needle is not known well, the less so the flatter the ray. */
        private double tolerance;
        /** The nearest hit that might also be a miss. */
        private double nearestDoubt = Double.POSITIVE_INFINITY;

        private double length;

        static Loop over(double[] corners, double[] r, double length) {
            Loop loop = new Loop();
            loop.length = length;
            double size = Math.sqrt(r[3] * r[3] + r[4] * r[4] + r[5] * r[5]);
            for (int f = 0; f < corners.length / 9; f++) {
                loop.look(corners, f, r, size);
            }
            return loop;
        }

        private void look(double[] p, int f, double[] r, double size) {
            double[] facet = Arrays.copyOfRange(p, 9 * f, 9 * f + 9);
            double[] n = Turn.unit(Soup.normal(facet));
            double along = (n[0] * r[3] + n[1] * r[4] + n[2] * r[5]) / size;
            double height = n[0] * (facet[0] - r[0]) + n[1] * (facet[1] - r[1]) + n[2] * (facet[2] - r[2]);
            if (Math.abs(along) < 1e-6) {
                // Edge-on: a doubt if the ray comes near the plane where the facet is.
                if (Math.abs(height) < 1e-3) {
                    nearestDoubt = 0;
                }
                return;
            }
            double t = height / along / size;
            double[] at = {r[0] + t * r[3], r[1] + t * r[4], r[2] + t * r[5]};
            double inside = borderDistance(facet, n, at);
            double doubt = NEAR / Math.abs(along);
            if (t * size < -doubt || inside < -doubt) {
                return;
            }
            if (t * size < doubt || inside < doubt || Math.abs(t - length) * size < doubt) {
                nearestDoubt = Math.min(nearestDoubt, t);
            } else if (t < length && t < distance) {
                distance = t;
                tolerance = doubt / size;
            }
        }

        /** Distance from the nearest side of the facet's outline, mm, negative outside of it. */
        private static double borderDistance(double[] facet, double[] n, double[] at) {
            double least = Double.POSITIVE_INFINITY;
            for (int k = 0; k < 3; k++) {
                int a = 3 * k;
                int b = 3 * ((k + 1) % 3);
                double[] side = {facet[b] - facet[a], facet[b + 1] - facet[a + 1], facet[b + 2] - facet[a + 2]};
                double[] to = {at[0] - facet[a], at[1] - facet[a + 1], at[2] - facet[a + 2]};
                least = Math.min(least, Turn.dot(n, Turn.cross(side, to)) / Turn.length(side));
            }
            return least;
        }

        boolean doubtful() {
            return nearestDoubt < distance + NEAR && nearestDoubt < Double.POSITIVE_INFINITY;
        }

        /** Whether the line cuts a facet, give or take a share of it: the three volumes over the sides have one sign. */
        static boolean volumesAgree(double[] p, int f, double[] r, double share) {
            double[] volumes = new double[3];
            double[] way = {r[3], r[4], r[5]};
            double sum = 0;
            for (int k = 0; k < 3; k++) {
                int a = 9 * f + 3 * k;
                int b = 9 * f + 3 * ((k + 1) % 3);
                double[] fromA = {p[a] - r[0], p[a + 1] - r[1], p[a + 2] - r[2]};
                double[] fromB = {p[b] - r[0], p[b + 1] - r[1], p[b + 2] - r[2]};
                volumes[k] = Turn.dot(way, Turn.cross(fromA, fromB));
                sum += volumes[k];
            }
            for (double volume : volumes) {
                if (volume / sum < -share) {
                    return false;
                }
            }
            return true;
        }
    }
}
