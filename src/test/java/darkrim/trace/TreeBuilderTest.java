package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;

/** The tree does not depend on how many threads build it. */
class TreeBuilderTest {
    @Test
    void oneThreadAndFourBuildTheSameTree() {
        // More facets than one thread builds in one go.
        double[] corners = Soup.STREWN.facets(60_000, 241);
        FacetTree one = builtBy(1, corners);
        FacetTree four = builtBy(4, corners);
        assertThat(four.order).isEqualTo(one.order);
        assertThat(four.children).isEqualTo(one.children);
        assertThat(four.borders).isEqualTo(one.borders);
        new TreeShape(corners, one);
    }

    private static FacetTree builtBy(int threads, double[] corners) {
        ForkJoinPool pool = new ForkJoinPool(threads);
        try {
            return pool.submit(() -> Soup.tree(corners)).join();
        } finally {
            pool.shutdown();
        }
    }
}
