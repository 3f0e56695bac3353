package darkrim.assembly;

import darkrim.geom.mesh.AnchoredFaces;
import darkrim.geom.mesh.CreaseFaces;
import darkrim.geom.mesh.MendedMesh;
import darkrim.geom.mesh.Mending;
import darkrim.geom.mesh.MeshFace;
import darkrim.geom.mesh.NamedFaces;
import darkrim.layout.Shape;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A mesh part in its own frame: mended, split into faces, named.
 *
 * @param mended the mesh
 * @param faces its faces with their names
 * @param matches what the names in the layout found
 */
public record MeshShape(MendedMesh mended, List<MeshFace> faces, List<AnchoredFaces.Match> matches) {
    /** More faces than this are facets, not faces. */
    private static final int MOST_FACES = 20_000;
    /** Facets of a mesher that are nearer to the surface than this lie on it, mm. */
    private static final double EXACT = 1e-6;

    /** Copies the lists. */
    public MeshShape {
        faces = List.copyOf(faces);
        matches = List.copyOf(matches);
    }

    /**
     * The mesh of a shape.
     *
     * @throws IllegalArgumentException if it has no facet with an area, or too many faces
     */
    public static MeshShape of(Shape.Mesh shape) {
        MendedMesh mended = Mending.of(shape.file().mesh().scaled(shape.unit()));
        int[] faceOf = CreaseFaces.of(mended.mesh(), shape.crease());
        int count = 0;
        for (int face : faceOf) {
            count = Math.max(count, face + 1);
        }
        if (count > MOST_FACES) {
            throw new IllegalArgumentException("its mesh falls into " + count + " faces, more than " + MOST_FACES
                    + ": give 'crease' a larger angle");
        }
        List<MeshFace> faces = NamedFaces.of(mended.mesh(), faceOf);
        List<AnchoredFaces.Match> matches = AnchoredFaces.of(mended.mesh(), faces, shape.names(), shape.within());
        return new MeshShape(mended, NamedFaces.renamed(faces, matches), matches);
    }

    /** The bodies: its closed shells and its open ones. */
    List<MeshPiece> pieces() {
        List<MeshFace> closed = new ArrayList<>();
        List<MeshFace> open = new ArrayList<>();
        for (MeshFace face : faces) {
            int shell = mended.shellOf(face.facets()[0]);
            (mended.isClosed(shell) ? closed : open).add(face);
        }
        List<MeshPiece> pieces = new ArrayList<>();
        if (!closed.isEmpty()) {
            pieces.add(new MeshPiece(mended.mesh(), closed, true));
        }
        if (!open.isEmpty()) {
            pieces.add(new MeshPiece(mended.mesh(), open, false));
        }
        return pieces;
    }

    /** Whether no face is curved, so that the mesh is as true as its corners. */
    boolean isFlat() {
        return faces.stream().allMatch(face -> face.size().flat());
    }

    /**
     * How far its facets may lie from the true surface, mm: 0 where nothing is said of it, or where a mesher's facets lie on it. What is stated of
     * a file counts though no face looks curved: facets that turn by more than the crease are faces of their own.
     */
    public double chordError(Shape.Mesh shape) {
        boolean exact = shape.file()
                .meshing()
                .filter(made -> isFlat() && made.deviation() < EXACT)
                .isPresent();
        return exact ? 0 : shape.chord().orElse(0.0);
    }

    /** Finishes by the end of the name of a surface, from the materials of the file. */
    Map<String, String> finishes(Shape.Mesh shape) {
        Map<String, String> finishes = new HashMap<>();
        for (MeshFace face : faces) {
            String finish = shape.finishOf().get(face.group().material());
            if (finish != null) {
                finishes.put(face.name(), finish);
                finishes.put(face.name() + MeshPiece.BACK, finish);
            }
        }
        return finishes;
    }
}
