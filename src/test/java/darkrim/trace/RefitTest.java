package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A tree that is fitted to facets that moved answers as one that is built for them. */
class RefitTest {
    private final Ray ray = new Ray();
    private final Ray other = new Ray();

    @ParameterizedTest
    @EnumSource
    void theAnswersAreThoseOfAFreshTree(Soup soup) {
        double[] before = soup.facets(2_000, 227);
        // Others of the same kind, at other places: no facet stays near where it was.
        double[] after = soup.facets(2_000, 229);
        int[] planes = new int[2_000];
        FacetTree fitted = FacetTree.build(before, planes, Soup.BOUND).refit(after, planes, 2 * Soup.BOUND);
        FacetTree fresh = FacetTree.build(after, planes, 2 * Soup.BOUND);
        new TreeShape(after, fitted);
        assertThat(fitted.contact()).isEqualTo(fresh.contact());
        SplittableRandom random = new SplittableRandom(233);
        int hits = 0;
        for (int i = 0; i < 5_000; i++) {
            double[] r = Soup.ray(after, random);
            ray.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            other.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            assertThat(fitted.nearest(ray)).isEqualTo(fresh.nearest(other));
            assertThat(ray.distance()).isEqualTo(other.distance());
            assertThat(ray.weightA()).isEqualTo(other.weightA());
            hits += ray.facet() >= 0 ? 1 : 0;
        }
        assertThat(hits).isPositive();
    }

    @Test
    void anotherNumberOfFacetsIsRefused() {
        FacetTree tree = Soup.tree(Soup.STREWN.facets(10, 239));
        assertThatThrownBy(() -> tree.refit(new double[99], new int[11], Soup.BOUND))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("10");
    }
}
