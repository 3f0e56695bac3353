package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A tree takes at most 120 bytes a facet beyond the caller's own corners and planes, by the lengths of its arrays. */
class TreeMemoryTest {
    private static final int MOST = 120;
    /** Fewer facets share a root with room for eight children. */
    private static final int FACETS = 20_000;

    @ParameterizedTest
    @EnumSource
    void facetsWithoutOrderTakeNoMoreThanPromised(Soup soup) {
        double[] corners = soup.facets(FACETS, 251);
        promised(soup.toString(), Soup.tree(corners));
    }

    @Test
    void aSurfaceTakesNoMoreThanPromised() {
        promised("a ball", Soup.tree(Solid.sphere(100, 128, 128).flat()));
    }

    private static void promised(String what, FacetTree tree) {
        long bytes = (long) Double.BYTES * (tree.corners.length + tree.box.length)
                + (long) Float.BYTES * tree.borders.length
                + (long) Integer.BYTES * (tree.children.length + tree.order.length + tree.planes.length);
        double each = (double) bytes / tree.order.length;
        System.out.printf("%s: %d facets, %.1f bytes each%n", what, tree.order.length, each);
        assertThat(each).isLessThanOrEqualTo(MOST);
    }
}
