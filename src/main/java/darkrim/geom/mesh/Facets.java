package darkrim.geom.mesh;

import java.util.Arrays;

/** Meshes with some facets left out or changed. */
final class Facets {
    private Facets() {}

    /** The mesh without some facets; the same mesh if there are none. */
    static FacetMesh without(FacetMesh mesh, boolean[] drop) {
        int[] corners = new int[3 * mesh.facetCount()];
        int[] groupOf = new int[mesh.facetCount()];
        int kept = 0;
        for (int f = 0; f < drop.length; f++) {
            if (!drop[f]) {
                for (int k = 0; k < 3; k++) {
                    corners[3 * kept + k] = mesh.corner(f, k);
                }
                groupOf[kept++] = mesh.groupOf(f);
            }
        }
        return kept == drop.length ? mesh : mesh.with(Arrays.copyOf(corners, 3 * kept), Arrays.copyOf(groupOf, kept));
    }

    /** The mesh with some facets turned over. */
    static FacetMesh turned(FacetMesh mesh, boolean[] turn) {
        int[] corners = new int[3 * mesh.facetCount()];
        int[] groupOf = new int[mesh.facetCount()];
        for (int f = 0; f < turn.length; f++) {
            groupOf[f] = mesh.groupOf(f);
            corners[3 * f] = mesh.corner(f, 0);
            corners[3 * f + 1] = mesh.corner(f, turn[f] ? 2 : 1);
            corners[3 * f + 2] = mesh.corner(f, turn[f] ? 1 : 2);
        }
        return mesh.with(corners, groupOf);
    }
}
