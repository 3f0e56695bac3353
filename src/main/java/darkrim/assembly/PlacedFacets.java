package darkrim.assembly;

import darkrim.geom.Placement;
import darkrim.geom.mesh.FacetMesh;
import java.util.AbstractList;
import java.util.RandomAccess;

/**
 * Some facets of a mesh in place, made when they are asked for: copies of a part share the facets of its file. Facets that share a point
 * share it bit for bit in place, too. Immutable.
 */
final class PlacedFacets extends AbstractList<Triangle> implements RandomAccess {
    private final FacetMesh mesh;
    private final int[] facets;
    private final Placement placement;

    /** Takes the array over. */
    PlacedFacets(FacetMesh mesh, int[] facets, Placement placement) {
        this.mesh = mesh;
        this.facets = facets;
        this.placement = placement;
    }

    @Override
    public Triangle get(int index) {
        int f = facets[index];
        return new Triangle(mesh.at(f, 0), mesh.at(f, 1), mesh.at(f, 2)).placed(placement);
    }

    @Override
    public int size() {
        return facets.length;
    }
}
