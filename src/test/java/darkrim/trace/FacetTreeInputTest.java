package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The borders of what a tree takes, and rays that are nothing. */
class FacetTreeInputTest {
    private static final double[] ONE = {-1, -1, 2, 1, -1, 2, 0, 2, 2};

    private final Ray ray = new Ray();

    @Test
    void anEmptyTreeMeetsAndBlocksNothing() {
        FacetTree tree = FacetTree.build(new double[0], new int[0], 0);
        up(Double.POSITIVE_INFINITY);
        assertThat(tree.nearest(ray)).isEqualTo(-1);
        assertThat(ray.facet()).isEqualTo(-1);
        assertThat(tree.blocked(ray)).isFalse();
        List<Integer> seen = new ArrayList<>();
        tree.touching(new double[] {-1, -1, -1}, new double[] {1, 1, 1}, seen::add);
        assertThat(seen).isEmpty();
    }

    @Test
    void oneFacetIsMetFromBothSides() {
        FacetTree tree = Soup.tree(ONE);
        up(Double.POSITIVE_INFINITY);
        assertThat(tree.nearest(ray)).isZero();
        assertThat(ray.distance()).isEqualTo(2);
        ray.set(0, 0, 5, 0, 0, -1, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
        assertThat(tree.nearest(ray)).isZero();
        assertThat(ray.distance()).isEqualTo(3);
    }

    @ParameterizedTest
    @ValueSource(doubles = {2, 1.999, 0, -1, Double.NaN})
    void whatLiesAtOrBeyondTheEndOfARayIsNotMet(double length) {
        FacetTree tree = Soup.tree(ONE);
        up(length);
        assertThat(tree.nearest(ray)).isEqualTo(-1);
        up(length);
        assertThat(tree.blocked(ray)).isFalse();
    }

    @Test
    void aRayThatStartsOnAFacetWithoutNamingItsPlaneDoesNotMeetItAtDistanceZero() {
        FacetTree tree = Soup.tree(ONE);
        ray.set(0, 0, 2, 0, 0, 1, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
        assertThat(tree.nearest(ray)).isEqualTo(-1);
    }

    @Test
    void aRayWithoutDirectionMeetsNothing() {
        FacetTree tree = Soup.tree(ONE);
        ray.set(0, 0, 0, 0, 0, 0, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
        assertThat(tree.nearest(ray)).isEqualTo(-1);
        ray.set(0, 0, 0, Double.NaN, 0, 1, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
        assertThat(tree.blocked(ray)).isFalse();
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 300.1})
    void aCoordinateThatIsNoNumberWithinTheBoundIsRefused(double coordinate) {
        double[] corners = ONE.clone();
        corners[4] = coordinate;
        assertThatThrownBy(() -> Soup.tree(corners))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("facet 0");
    }

    @Test
    void coordinatesThatDoNotMakeWholeFacetsAreRefused() {
        assertThatThrownBy(() -> FacetTree.build(new double[10], new int[1], 1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aHundredThousandIdenticalFacetsStayWithinTheDepth() {
        int count = 100_000;
        double[] corners = new double[9 * count];
        for (int f = 0; f < count; f++) {
            System.arraycopy(ONE, 0, corners, 9 * f, 9);
        }
        FacetTree tree = Soup.tree(corners);
        up(Double.POSITIVE_INFINITY);
        assertThat(tree.nearest(ray)).isZero();
        up(Double.POSITIVE_INFINITY);
        assertThat(tree.blocked(ray)).isTrue();
        assertThat(new TreeShape(corners, tree).depth()).isLessThanOrEqualTo(FacetTree.DEEPEST);
    }

    @Test
    void facetsEverNearerToAPointStayWithinTheDepthAndAreAllFound() {
        // Each a hundredth nearer than the one before: equal bins part off a few at a time.
        int count = 3_000;
        double[] corners = new double[9 * count];
        for (int f = 0; f < count; f++) {
            double x = 200 * Math.pow(0.99, f);
            double[] facet = {x, -x, -x, x, x, -x, x, 0, x};
            System.arraycopy(facet, 0, corners, 9 * f, 9);
        }
        FacetTree tree = Soup.tree(corners);
        assertThat(new TreeShape(corners, tree).depth()).isLessThanOrEqualTo(FacetTree.DEEPEST);
        for (int f = 0; f < count; f += 100) {
            double x = 200 * Math.pow(0.99, f);
            ray.set(1.001 * x, 0, 0, -1, 0, 0, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            assertThat(tree.nearest(ray)).isEqualTo(f);
        }
    }

    @ParameterizedTest
    @EnumSource
    void everyFacetThatTouchesABoxIsNamedOnce(Soup soup) {
        double[] corners = soup.facets(500, 107);
        FacetTree tree = Soup.tree(corners);
        SplittableRandom random = new SplittableRandom(109);
        for (int i = 0; i < 200; i++) {
            double[] low = Soup.spot(random, 100);
            double[] high = {low[0] + 20 * random.nextDouble(), low[1] + 20 * random.nextDouble(), low[2] + 20};
            List<Integer> seen = new ArrayList<>();
            tree.touching(low, high, seen::add);
            Set<Integer> once = new HashSet<>(seen);
            assertThat(once).hasSameSizeAs(seen);
            for (int f = 0; f < 500; f++) {
                if (boxTouches(corners, f, low, high)) {
                    assertThat(once).contains(f);
                }
            }
        }
    }

    private static boolean boxTouches(double[] p, int f, double[] low, double[] high) {
        for (int k = 0; k < 3; k++) {
            double least = Math.min(p[9 * f + k], Math.min(p[9 * f + 3 + k], p[9 * f + 6 + k]));
            double most = Math.max(p[9 * f + k], Math.max(p[9 * f + 3 + k], p[9 * f + 6 + k]));
            if (least > high[k] || most < low[k]) {
                return false;
            }
        }
        return true;
    }

    private void up(double length) {
        ray.set(0, 0, 0, 0, 0, 1, length, Ray.NO_PLANE);
    }
}
