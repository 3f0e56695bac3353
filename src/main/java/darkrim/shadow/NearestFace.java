package darkrim.shadow;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The face of several that is nearest to a point.
 *
 * @param face the face
 * @param alongU from the nearest point of the face to the point, along its frame's u, mm; 0 above the face
 * @param alongV likewise along v
 * @param height height of the point above the face's plane, mm
 * @param point the nearest point of the face, mm
 */
record NearestFace(Face face, double alongU, double alongV, double height, Vector3D point) {
    static NearestFace of(List<Face> faces, Vector3D point) {
        NearestFace best = null;
        for (Face face : faces) {
            NearestFace found = of(face, point);
            if (best == null || found.distance() < best.distance()) {
                best = found;
            }
        }
        if (best == null) {
            throw new IllegalArgumentException("no face");
        }
        return best;
    }

    /** How far the point is from the face, mm. */
    double distance() {
        return Math.sqrt(alongU * alongU + alongV * alongV + height * height);
    }

    private static NearestFace of(Face face, Vector3D point) {
        FlatPiece piece = face.piece();
        double u = piece.frame().inU(point);
        double v = piece.frame().inV(point);
        double[] offset = offset(piece, u, v);
        return new NearestFace(
                face,
                offset[0],
                offset[1],
                piece.frame().height(point),
                piece.frame().at(u - offset[0], v - offset[1]));
    }

    private static double[] offset(FlatPiece piece, double u, double v) {
        double[] best = {0, 0};
        double least = Double.POSITIVE_INFINITY;
        boolean inside = true;
        int n = piece.size();
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double su = piece.u(i) - piece.u(j);
            double sv = piece.v(i) - piece.v(j);
            double pu = u - piece.u(j);
            double pv = v - piece.v(j);
            inside &= su * pv - sv * pu >= 0;
            double t = Math.max(0, Math.min(1, (pu * su + pv * sv) / (su * su + sv * sv)));
            double offU = pu - t * su;
            double offV = pv - t * sv;
            if (Math.hypot(offU, offV) < least) {
                least = Math.hypot(offU, offV);
                best = new double[] {offU, offV};
            }
        }
        return inside ? new double[] {0, 0} : best;
    }
}
