package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The kernel with vectors and the scalar one give the same bits, whatever the facets and wherever the rays run. */
class KernelTest {
    /** Rays in each of six kinds of scenes. */
    private static final int RAYS = Boolean.getBoolean("long") ? 2_000_000 : 150_000;

    private final Kernel scalar = new ScalarKernel();
    private Kernel vector;
    private final Ray ray = new Ray();
    private final Ray other = new Ray();

    @BeforeEach
    void needsTheModule() {
        // The build switches it on; an editor may not.
        vector = KernelChoice.vector().orElse(null);
        Assumptions.assumeTrue(vector != null, "the module for vectors is not switched on");
    }

    @Test
    void theKernelWithVectorsIsChosenWhereItCanRun() {
        Assumptions.assumeTrue(System.getProperty("darkrim.kernel") == null);
        assertThat(Kernel.CHOSEN).hasSameClassAs(vector);
        assertThat(KernelChoice.description()).isEqualTo(vector.description());
    }

    @ParameterizedTest
    @EnumSource
    void facetsWithoutOrderAreMetAlike(Soup soup) {
        SplittableRandom random = new SplittableRandom(211);
        int scenes = 30;
        for (int scene = 0; scene < scenes; scene++) {
            double[] corners = soup.facets(1 << scene % 12, scene);
            FacetTree tree = Soup.tree(corners);
            for (int i = 0; i < RAYS / scenes; i++) {
                // Every third is aimed at an edge or a corner of a facet.
                double[] r = Soup.ray(corners, random);
                double length = random.nextInt(4) == 0 ? random.nextDouble() * 200 : Double.POSITIVE_INFINITY;
                compare(tree, r, length, i % 5 == 0 ? random.nextInt(corners.length / 9) : Ray.NO_PLANE);
            }
        }
    }

    @Test
    void aClosedSurfaceIsMetAlikeFromOutsideAndInside() {
        Solid ball = Solid.sphere(100, 96, 96);
        double[] corners = ball.flat();
        FacetTree tree = Soup.tree(corners);
        SplittableRandom random = new SplittableRandom(223);
        for (int i = 0; i < RAYS; i++) {
            double[] from = Soup.spot(random, i % 2 == 0 ? 300 : 40);
            int corner = 3 * random.nextInt(corners.length / 3);
            double[] r = {
                from[0],
                from[1],
                from[2],
                corners[corner] - from[0],
                corners[corner + 1] - from[1],
                corners[corner + 2] - from[2]
            };
            compare(tree, r, i % 3 == 0 ? 1 : Double.POSITIVE_INFINITY, Ray.NO_PLANE);
        }
    }

    private void compare(FacetTree tree, double[] r, double length, int plane) {
        ray.set(r[0], r[1], r[2], r[3], r[4], r[5], length, plane);
        other.set(r[0], r[1], r[2], r[3], r[4], r[5], length, plane);
        int facet = scalar.nearest(tree, ray);
        int otherFacet = vector.nearest(tree, other);
        if (facet != otherFacet || bits(ray.distance()) != bits(other.distance()) || (facet >= 0 && weightsDiffer())) {
            assertThat(otherFacet).isEqualTo(facet);
            assertThat(other)
                    .usingRecursiveComparison()
                    .ignoringFields("stack", "entries")
                    .isEqualTo(ray);
        }
        ray.set(r[0], r[1], r[2], r[3], r[4], r[5], length, plane);
        other.set(r[0], r[1], r[2], r[3], r[4], r[5], length, plane);
        boolean blocked = scalar.blocked(tree, ray);
        if (blocked != facet >= 0 || vector.blocked(tree, other) != blocked) {
            assertThat(blocked).as("blocked where a facet is met").isEqualTo(facet >= 0);
            assertThat(vector.blocked(tree, other)).isEqualTo(blocked);
        }
    }

    /** Where nothing is met, they are left from before. */
    private boolean weightsDiffer() {
        return bits(ray.weightA()) != bits(other.weightA())
                || bits(ray.weightB()) != bits(other.weightB())
                || bits(ray.weightC()) != bits(other.weightC());
    }

    private static long bits(double value) {
        return Double.doubleToRawLongBits(value);
    }
}
