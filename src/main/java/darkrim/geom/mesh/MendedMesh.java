package darkrim.geom.mesh;

import java.util.List;

/**
 * A mesh after what can be mended safely was mended.
 *
 * @param mesh the mesh; every facet has area
 * @param shellOf the shell of each facet: facets that hang together by edges
 * @param closed of each shell, whether it has no open edge, so that it encloses material
 * @param flaws what was mended and what is still wrong, each kind once
 */
public record MendedMesh(FacetMesh mesh, int[] shellOf, boolean[] closed, List<MeshFlaw> flaws) {
    /** Copies the list. The arrays are not copied and must not be changed. */
    public MendedMesh {
        flaws = List.copyOf(flaws);
    }
}
