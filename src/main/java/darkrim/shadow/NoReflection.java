package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Proves of pieces of surfaces that they send no once-reflected light to a receiver: each is dark, or no straight line from the receiver
 * reaches it. The second is a {@link DarknessProof} too, with the faces of the receiver in the place of the pupil. One thread.
 */
final class NoReflection {
    /** A proof for one piece of many is not worth more. */
    private static final ProofSettings BRIEF = new ProofSettings(0.02, 200, ProofSettings.DEFAULT.gapWidth());
    /** Receivers of more faces are taken to see everything. */
    private static final int MOST_FACES = 4;

    private final DarknessProof dark;
    /** One for each face of the receiver; all of them must hold. Empty where nothing is known. */
    private final List<DarknessProof> unseen;

    NoReflection(Scene scene, FacetTree tree, Surface receiver, BooleanSupplier stop) {
        dark = new DarknessProof(scene, tree, BRIEF, stop);
        List<Face> faces = dark.faces(receiver);
        unseen = faces.size() > MOST_FACES
                ? List.of()
                : faces.stream()
                        .map(face -> new DarknessProof(scene.under(light(face.piece())), tree, BRIEF, stop))
                        .toList();
    }

    /** A beam from a face, all over it and to every side. */
    private static Beam light(FlatPiece piece) {
        List<Vector2D> corners = new ArrayList<>();
        for (int i = 0; i < piece.size(); i++) {
            corners.add(Vector2D.of(piece.u(i), piece.v(i)));
        }
        return Beam.of(new Pupil(Polygon.of(corners), piece.frame()));
    }

    /** Whether a whole surface is proved unseen from the receiver. */
    boolean isUnseen(Surface surface) {
        return !unseen.isEmpty() && unseen.stream().allMatch(proof -> proof.of(surface) instanceof Darkness.Dark);
    }

    /**
     * Whether a piece is proved dark or unseen.
     *
     * @param piece the piece
     * @param plane the number of its plane in the scene
     */
    boolean isProved(SpaceTriangle piece, int plane) {
        List<Face> faces = List.of(face(piece, plane));
        return isDark(dark, faces) || (!unseen.isEmpty() && unseen.stream().allMatch(proof -> isDark(proof, faces)));
    }

    private static boolean isDark(DarknessProof proof, List<Face> faces) {
        return proof.of(faces, "") instanceof Darkness.Dark;
    }

    private static Face face(SpaceTriangle piece, int plane) {
        Vector3D along = piece.b().subtract(piece.a());
        Frame frame = Frame.of(piece.a(), along, piece.normal().cross(along));
        List<Vector3D> corners = frame.v().dot(piece.c().subtract(piece.a())) > 0
                ? List.of(piece.a(), piece.b(), piece.c())
                : List.of(piece.a(), piece.c(), piece.b());
        double[] inPlane = new double[6];
        for (int i = 0; i < 3; i++) {
            inPlane[2 * i] = frame.inU(corners.get(i));
            inPlane[2 * i + 1] = frame.inV(corners.get(i));
        }
        return new Face(FlatPiece.of(frame, inPlane), plane);
    }
}
