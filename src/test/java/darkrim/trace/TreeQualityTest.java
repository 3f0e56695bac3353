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
        TreeShape shape = new TreeShape(corners, 0x1p-44 * Soup.BOUND);
        double halved = halvedCost(corners);
        System.out.printf(
                "Tree of %d facets, %s: cost %.1f, halved by number %.1f, depth %d%n",
                FACETS, soup, shape.cost(), halved, shape.depth());
        assertThat(shape.cost()).isLessThan(halved);
        // log2(4000) = 12; twice that allows for clusters.
        assertThat(shape.depth()).isLessThanOrEqualTo(24);
    }

    @Test
    void aBallCostsAboutAsManyStepsAsItsTreeIsDeep() {
        Solid ball = Solid.sphere(100, 128, 256);
        TreeShape shape = new TreeShape(ball.flat(), 0x1p-44 * Soup.BOUND);
        System.out.printf(
                "Tree of a ball of %d facets: cost %.1f, depth %d%n",
                ball.facets().length, shape.cost(), shape.depth());
        // A line cuts a convex surface twice; about each cut it looks at both children on 16 levels.
        assertThat(shape.cost()).isLessThan(4.0 * 16);
        assertThat(shape.depth()).isLessThan(32);
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
        Boxes boxes = new Boxes(corners, 0);
        double[] root = boxOf(boxes, all);
        return halvedCost(boxes, all, Boxes.halfArea(root, 0));
    }

    private static double halvedCost(Boxes boxes, List<Integer> facets, double rootArea) {
        double[] box = boxOf(boxes, facets);
        double share = Boxes.halfArea(box, 0) / rootArea;
        if (facets.size() <= 4) {
            return share * facets.size();
        }
        int axis = 0;
        for (int k = 1; k < 3; k++) {
            axis = box[3 + k] - box[k] > box[3 + axis] - box[axis] ? k : axis;
        }
        int along = axis;
        List<Integer> sorted = new ArrayList<>(facets);
        sorted.sort(Comparator.comparingDouble(f -> boxes.centre(f, along)));
        int middle = sorted.size() / 2;
        return share
                + halvedCost(boxes, sorted.subList(0, middle), rootArea)
                + halvedCost(boxes, sorted.subList(middle, sorted.size()), rootArea);
    }

    private static double[] boxOf(Boxes boxes, List<Integer> facets) {
        double[] box = new double[6];
        Boxes.empty(box, 0);
        facets.forEach(f -> boxes.growBy(f, box, 0));
        return box;
    }
}
