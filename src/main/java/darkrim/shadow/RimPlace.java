package darkrim.shadow;

import darkrim.geom.Frame;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A place on the rim of a convex face, as a face of its own that is small enough to stand for a point. */
record RimPlace(Face face, Vector3D point, Vector3D outward, boolean isCorner) {
    /** Half the size of the small face, mm. */
    private static final double SMALL = 1e-9;

    /** A corner whose sides turn by less than this, rad, is part of a side. */
    private static final double STRAIGHT = 1e-6;

    /** The corners and the middles of the sides. */
    static List<RimPlace> of(Face face) {
        List<RimPlace> places = new ArrayList<>();
        FlatPiece piece = face.piece();
        Frame frame = piece.frame();
        int n = piece.size();
        for (int i = 0; i < n; i++) {
            Vector3D before = outward(piece, (i + n - 1) % n);
            Vector3D after = outward(piece, i);
            Vector3D corner = frame.at(piece.u(i), piece.v(i));
            int next = (i + 1) % n;
            if (before.distance(after) > STRAIGHT) {
                places.add(new RimPlace(face, corner, before.add(after).normalize(), true));
            }
            Vector3D middle = corner.lerp(frame.at(piece.u(next), piece.v(next)), 0.5);
            places.add(new RimPlace(face, middle, after, false));
        }
        return places;
    }

    /** The small face, moved in by a distance. */
    List<Face> face(double inward) {
        Frame frame = face.piece().frame();
        Vector3D here = point.subtract(outward.multiply(inward));
        double u = frame.inU(here);
        double v = frame.inV(here);
        double[] square = {u - SMALL, v - SMALL, u + SMALL, v - SMALL, u + SMALL, v + SMALL, u - SMALL, v + SMALL};
        return List.of(new Face(FlatPiece.of(frame, square), face.plane()));
    }

    private static Vector3D outward(FlatPiece piece, int side) {
        int next = (side + 1) % piece.size();
        double du = piece.v(next) - piece.v(side);
        double dv = piece.u(side) - piece.u(next);
        Frame frame = piece.frame();
        return frame.u().multiply(du).add(frame.v().multiply(dv)).normalize();
    }
}
