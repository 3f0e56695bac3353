package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Which facet is met does not depend on how the tree happened to be built. */
class TieTest {
    private final Ray ray = new Ray();
    private final Ray other = new Ray();

    @Test
    void ofEqualFacetsTheOneWithTheLowestNumberIsMet() {
        SplittableRandom random = new SplittableRandom(71);
        double[] shape = {-1, -1, 2, 1, -1, 2, 0, 2, 2};
        for (int copies = 1; copies < 40; copies++) {
            // Other facets around make trees of different shapes.
            int others = random.nextInt(200);
            double[] corners = Soup.CLUSTERS.facets(others + copies, copies);
            int lowest = Integer.MAX_VALUE;
            for (int i = 0; i < copies; i++) {
                int at = random.nextInt(others + copies);
                System.arraycopy(shape, 0, corners, 9 * at, 9);
                lowest = Math.min(lowest, at);
            }
            ray.set(0, 0, 0, 0, 0, 1, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            assertThat(Soup.tree(corners).nearest(ray)).isEqualTo(lowest);
            assertThat(ray.distance()).isEqualTo(2);
        }
    }

    @ParameterizedTest
    @EnumSource
    void theAnswerDoesNotDependOnTheOrderOfFacetsButForTheirNumbers(Soup soup) {
        int count = 500;
        double[] corners = soup.facets(count, 73);
        SplittableRandom random = new SplittableRandom(79);
        int[] newPlace = shuffled(count, random);
        double[] moved = new double[corners.length];
        for (int f = 0; f < count; f++) {
            System.arraycopy(corners, 9 * f, moved, 9 * newPlace[f], 9);
        }
        FacetTree tree = Soup.tree(corners);
        FacetTree movedTree = Soup.tree(moved);
        int ties = 0;
        for (int i = 0; i < 20_000; i++) {
            double[] r = Soup.ray(corners, random);
            ray.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            other.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            int facet = tree.nearest(ray);
            int movedFacet = movedTree.nearest(other);
            assertThat(other.distance()).isEqualTo(ray.distance());
            if (facet < 0) {
                assertThat(movedFacet).isEqualTo(-1);
            } else if (movedFacet != newPlace[facet]) {
                // At exactly the same distance the lower number wins, and the numbers are others now.
                assertThat(movedFacet).isLessThan(newPlace[facet]);
                ties++;
            }
        }
        assertThat(ties).isLessThan(10_000);
    }

    @ParameterizedTest
    @EnumSource
    void theAnswerOfATreeIsThatOfItsFacetsOneByOne(Soup soup) {
        int count = 120;
        double[] corners = soup.facets(count, 83);
        FacetTree tree = Soup.tree(corners);
        FacetTree[] single = new FacetTree[count];
        for (int f = 0; f < count; f++) {
            single[f] = Soup.tree(Arrays.copyOfRange(corners, 9 * f, 9 * f + 9));
        }
        SplittableRandom random = new SplittableRandom(89);
        for (int i = 0; i < 5_000; i++) {
            double[] r = Soup.ray(corners, random);
            int nearest = -1;
            double distance = Double.MAX_VALUE;
            for (int f = 0; f < count; f++) {
                other.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
                if (single[f].nearest(other) >= 0 && other.distance() < distance) {
                    nearest = f;
                    distance = other.distance();
                }
            }
            ray.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            assertThat(tree.nearest(ray)).isEqualTo(nearest);
            assertThat(ray.distance()).isEqualTo(distance);
            ray.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            assertThat(tree.blocked(ray)).isEqualTo(nearest >= 0);
        }
    }

    private static int[] shuffled(int count, SplittableRandom random) {
        int[] place = new int[count];
        for (int i = 0; i < count; i++) {
            int j = random.nextInt(i + 1);
            place[i] = place[j];
            place[j] = i;
        }
        return place;
    }
}
