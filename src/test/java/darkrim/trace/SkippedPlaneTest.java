package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A ray that starts on a facet names its plane and never meets a facet in it, but everything else, however near. */
class SkippedPlaneTest {
    private final Ray ray = new Ray();

    @Test
    void aRayThatStartsOnAFacetNeverMeetsItsPlane() {
        SplittableRandom random = new SplittableRandom(97);
        int count = 200;
        double[] corners = Soup.COPLANAR.facets(count, 101);
        int[] planes = new int[count];
        for (int f = 0; f < count; f++) {
            int axis = flatAxis(corners, f);
            planes[f] = 10 * axis + (int) (corners[9 * f + axis] / 20 + 2);
        }
        FacetTree tree = FacetTree.build(corners, planes, Soup.BOUND);
        StartPoints starts = new StartPoints(corners, tree);
        double[] start = new double[3];
        int met = 0;
        int own = 0;
        for (int i = 0; i < 100_000; i++) {
            int facet = random.nextInt(count);
            double a = random.nextDouble();
            starts.place(facet, a, (1 - a) * random.nextDouble(), random.nextBoolean(), start);
            double[] way = Turn.direction(random);
            ray.set(start[0], start[1], start[2], way[0], way[1], way[2], Double.POSITIVE_INFINITY, planes[facet]);
            int hit = tree.nearest(ray);
            if (hit >= 0) {
                met++;
                assertThat(planes[hit]).isNotEqualTo(planes[facet]);
            }
            ray.set(start[0], start[1], start[2], way[0], way[1], way[2], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            int unnamed = tree.nearest(ray);
            own += unnamed >= 0 && planes[unnamed] == planes[facet] ? 1 : 0;
        }
        assertThat(met).isGreaterThan(10_000);
        assertThat(own).as("rays that meet the plane unless it is named").isGreaterThan(10_000);
    }

    @Test
    void aFacetAHairAboveTheStartIsMet() {
        double[] corners = {-1, -1, 0, 1, -1, 0, 0, 1, 0, -1, -1, 1e-9, 1, -1, 1e-9, 0, 1, 1e-9};
        FacetTree tree = FacetTree.build(corners, new int[] {0, 1}, 10);
        StartPoints starts = new StartPoints(corners, tree);
        double[] start = new double[3];
        starts.place(0, 0.3, 0.3, true, start);
        ray.set(start[0], start[1], start[2], 0, 0, 1, Double.POSITIVE_INFINITY, 0);
        assertThat(tree.nearest(ray)).isEqualTo(1);
        assertThat(ray.distance() + starts.lift()).isCloseTo(1e-9, org.assertj.core.api.Assertions.within(1e-20));
    }

    private static int flatAxis(double[] p, int f) {
        for (int k = 0; k < 3; k++) {
            if (p[9 * f + k] == p[9 * f + 3 + k] && p[9 * f + k] == p[9 * f + 6 + k]) {
                return k;
            }
        }
        throw new AssertionError("facet " + f + " is not square to an axis");
    }
}
