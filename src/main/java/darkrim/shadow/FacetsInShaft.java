package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import java.util.Arrays;

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
     * Those of the whole scene, in rising order. Facets in the plane of the face are none: light that leaves the face or comes to it passes
     * them by, as rays do.
     */
    int[] of(Shaft shaft, Face face) {
        int[] found = new int[16];
        int[] count = {0};
        int[][] holder = {found};
        tree.passing(shaft::mayTouch, f -> {
            if (radius == 0 && scene.plane(f) == face.plane()) {
                return;
            }
            if (count[0] == holder[0].length) {
                holder[0] = Arrays.copyOf(holder[0], 2 * count[0]);
            }
            holder[0][count[0]++] = f;
        });
        int[] facets = Arrays.copyOf(holder[0], count[0]);
        Arrays.sort(facets);
        return among(shaft, facets);
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
