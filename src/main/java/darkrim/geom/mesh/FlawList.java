package darkrim.geom.mesh;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Gathers flaws: counts each kind and keeps the worst place. For use by one thread. */
final class FlawList {
    private final Map<MeshFlaw.Kind, MeshFlaw> worst = new EnumMap<>(MeshFlaw.Kind.class);

    /** Adds a place. The largest is the worst, of slivers the narrowest. */
    void add(MeshFlaw.Kind kind, Vector3D at, double size) {
        MeshFlaw known = worst.get(kind);
        if (known == null) {
            worst.put(kind, new MeshFlaw(kind, 1, at, size));
            return;
        }
        boolean worse = kind == MeshFlaw.Kind.SLIVER ? size < known.size() : size > known.size();
        worst.put(kind, new MeshFlaw(kind, known.count() + 1, worse ? at : known.at(), worse ? size : known.size()));
    }

    /** Adds a facet by its middle and its longest side. */
    void add(MeshFlaw.Kind kind, FacetMesh mesh, int facet) {
        add(kind, middle(mesh, facet), FacetSize.of(mesh, facet).longest());
    }

    static Vector3D middle(FacetMesh mesh, int facet) {
        return Vector3D.centroid(mesh.at(facet, 0), mesh.at(facet, 1), mesh.at(facet, 2));
    }

    /** All kinds that were found, in their order. */
    List<MeshFlaw> all() {
        return new ArrayList<>(worst.values());
    }
}
