package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The tree is worth its name: cheaper than halving by number along the longest side, and not much deeper than it must be. */
class TreeQualityTest {
    private static final int FACETS = 4_000;

    @ParameterizedTest
    @EnumSource
    void theHeuristicBeatsHalvingByNumber(Soup soup) {
        double[] corners = soup.facets(FACETS, 113);
        TreeShape shape = new TreeShape(corners, Soup.tree(corners));
        double halved = halvedCost(corners);
        System.out.printf(
                "Tree of %d facets, %s: cost %.1f, halved by number %.1f, depth %d%n",
                FACETS, soup, shape.cost(), halved, shape.depth());
        assertThat(shape.cost()).isLessThan(halved);
        // log2(4000) = 12; no more for clusters, since a node has up to eight children.
        assertThat(shape.depth()).isLessThanOrEqualTo(12);
    }

    @Test
    void aBallCostsAboutAsManyStepsAsItsTreeIsDeep() {
        Solid ball = Solid.sphere(100, 128, 256);
        TreeShape shape = new TreeShape(ball.flat(), Soup.tree(ball.flat()));
        System.out.printf(
                "Tree of a ball of %d facets: cost %.1f, depth %d%n",
                ball.facets().length, shape.cost(), shape.depth());
        // A line cuts a convex surface twice; about each cut it looks at eight children on six levels, 8^6 being more
        // than the facets.
        assertThat(shape.cost()).isLessThan(2 * 8 * 6);
        assertThat(shape.depth()).isLessThan(16);
    }

    /** Figures only: how long it takes depends on the machine. */
    @Test
    void aMillionFacetsAreBuiltIntoATree() {
        for (int facets : new int[] {100_000, 1_000_000}) {
            double[] corners = Soup.STREWN.facets(facets, 127);
            long start = System.nanoTime();
            FacetTree tree = Soup.tree(corners);
            double seconds = 1e-9 * (System.nanoTime() - start);
            System.out.printf("Tree of %d facets built in %.2f s%n", facets, seconds);
            Ray ray = new Ray();
            ray.set(0, 0, 0, 0.3, 0.4, 0.5, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            assertThat(tree.nearest(ray)).isNotNegative();
        }
    }

    private static double halvedCost(double[] corners) {
        List<Integer> all = new ArrayList<>();
        for (int f = 0; f < corners.length / 9; f++) {
            all.add(f);
        }
        return halvedCost(corners, all, TreeShape.halfArea(boxOf(corners, all)));
    }

    /** Two boxes looked at in each node. */
    private static double halvedCost(double[] corners, List<Integer> facets, double rootArea) {
        double[] box = boxOf(corners, facets);
        double share = TreeShape.halfArea(box) / rootArea;
        if (facets.size() <= 4) {
            return share * facets.size();
        }
        int axis = 0;
        for (int k = 1; k < 3; k++) {
            axis = box[3 + k] - box[k] > box[3 + axis] - box[axis] ? k : axis;
        }
        int along = axis;
        List<Integer> sorted = new ArrayList<>(facets);
        sorted.sort(Comparator.comparingDouble(f -> {
            double[] own = boxOf(corners, List.of(f));
            return own[along] + own[3 + along];
        }));
        int middle = sorted.size() / 2;
        return 2 * share
                + halvedCost(corners, sorted.subList(0, middle), rootArea)
                + halvedCost(corners, sorted.subList(middle, sorted.size()), rootArea);
    }

    private static double[] boxOf(double[] corners, List<Integer> facets) {
        double[] box = {
            Double.POSITIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            Double.NEGATIVE_INFINITY,
            Double.NEGATIVE_INFINITY,
            Double.NEGATIVE_INFINITY
        };
        for (int f : facets) {
            for (int k = 0; k < 9; k++) {
                box[k % 3] = Math.min(box[k % 3], corners[9 * f + k]);
                box[3 + k % 3] = Math.max(box[3 + k % 3], corners[9 * f + k]);
            }
        }
        return box;
    }
}
