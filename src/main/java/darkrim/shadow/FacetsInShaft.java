package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/** Finds the facets that may touch a shaft: all others are apart from it. Counts those it looks at; one for each search. */
final class FacetsInShaft {
    private final Scene scene;
    private final FacetTree tree;
    private final double[] corners;
    private final double radius;
    private long lookedAt;

    /**
     * @param corners nine coordinates a facet, mm; not changed
     * @param radius by how much the faces are grown, mm
     */
    FacetsInShaft(Scene scene, FacetTree tree, double[] corners, double radius) {
        this.scene = scene;
        this.tree = tree;
        this.corners = corners;
        this.radius = radius;
    }

    /**
     * Those of the whole scene for a face, in rising order. Facets in the plane of the face are none: light that leaves the face or comes to it
     * passes them by, as rays do.
     */
    int[] of(Shaft shaft, Face face) {
        return among(shaft, inBoxes(shaft, f -> radius > 0 || scene.plane(f) != face.plane()));
    }

    /** All of the whole scene whose boxes in the tree may touch the shaft, in rising order; not counted. */
    int[] inBoxes(Shaft shaft) {
        return inBoxes(shaft, f -> true);
    }

    private int[] inBoxes(Shaft shaft, IntPredicate counts) {
        IntStream.Builder found = IntStream.builder();
        tree.passing(shaft::mayTouch, found);
        return found.build().filter(counts).sorted().toArray();
    }

    /** Those among some facets, in the same order. */
    int[] among(Shaft shaft, int[] facets) {
        lookedAt += facets.length;
        int[] left = new int[facets.length];
        int count = 0;
        double[] box = new double[6];
        for (int f : facets) {
            box(corners, f, box);
            if (shaft.mayTouch(box, 0)) {
                left[count++] = f;
            }
        }
        return Arrays.copyOf(left, count);
    }

    /** How many facets were looked at so far: counted, so that every machine ends at the same place. */
    long lookedAt() {
        return lookedAt;
    }

    /** The box about a facet: least x, y, z, greatest x, y, z, mm. */
    static void box(double[] corners, int f, double[] into) {
        for (int k = 0; k < 3; k++) {
            double a = corners[9 * f + k];
            double b = corners[9 * f + 3 + k];
            double c = corners[9 * f + 6 + k];
            into[k] = Math.min(a, Math.min(b, c));
            into[k + 3] = Math.max(a, Math.max(b, c));
        }
    }
}
