package darkrim.geom.mesh;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Faces with their names: by kind and place, and by what a designer called them. */
public final class NamedFaces {
    private NamedFaces() {}

    /**
     * The faces by kind and place, in the order of their names.
     *
     * @param mesh the mesh
     * @param faceOf face of each facet, from 0
     */
    public static List<MeshFace> of(FacetMesh mesh, int[] faceOf) {
        List<MeshFace> faces = new ArrayList<>(FaceNames.of(mesh, FaceMeasure.of(mesh, faceOf)));
        faces.sort(Comparator.comparing(MeshFace::name));
        return faces;
    }

    /** The same with the names that a designer gave, in place of the others. */
    public static List<MeshFace> renamed(List<MeshFace> faces, List<AnchoredFaces.Match> matches) {
        List<MeshFace> renamed = new ArrayList<>(faces);
        for (AnchoredFaces.Match match : matches) {
            if (match.face() >= 0) {
                renamed.set(
                        match.face(),
                        faces.get(match.face()).named(match.anchor().name()));
            }
        }
        return renamed;
    }
}
