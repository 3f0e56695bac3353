package darkrim.assembly;

import darkrim.diagnostic.Place;
import darkrim.geom.Placement;
import darkrim.geom.mesh.FacetMesh;
import darkrim.geom.mesh.MeshFace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The closed shells of a mesh, or its open ones, as one body.
 *
 * @param mesh the facets, mm
 * @param faces the faces that belong to the body
 * @param solid whether they are closed; the facets of open shells have a surface on either side
 */
record MeshPiece(FacetMesh mesh, List<MeshFace> faces, boolean solid) implements Piece {
    /** What is added to the name of a face of an open shell for its other side. */
    static final String BACK = "/back";

    @Override
    public int size() {
        return faces.stream().mapToInt(face -> face.facets().length).sum();
    }

    @Override
    public Body placed(String part, Placement placement, Place place) {
        List<Face> placed = new ArrayList<>();
        for (MeshFace face : faces) {
            String name = part + "/" + face.name();
            PlacedFacets facets = new PlacedFacets(mesh, face.facets(), placement);
            for (Triangle facet : facets) {
                if (!(facet.area() > 0)) {
                    throw new IllegalArgumentException("a facet of " + face.name()
                            + " has no area where the part stands: bring the mesh nearer to the origin");
                }
            }
            placed.add(new Face(name, solid ? Optional.empty() : Optional.of(name + BACK), facets));
        }
        return new Body(part, solid, placed, place);
    }
}
