package darkrim.shadow;

import java.util.function.BooleanSupplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The point looked at so far that sees the least share of the pupil. One thread. */
final class LowestPoint {
    /** A point at the very rim lies on the planes of its neighbours: it is drawn in by this share. */
    private static final double DRAWN_IN = 1e-9;

    private final VisiblePupil visible;
    private final BooleanSupplier stop;
    private double share = Double.POSITIVE_INFINITY;
    private Vector3D point = Vector3D.ZERO;

    /**
     * @param visible what a point sees
     * @param stop whether to look at no more points: asked before each but the very first
     */
    LowestPoint(VisiblePupil visible, BooleanSupplier stop) {
        this.visible = visible;
        this.stop = stop;
    }

    /** The share that it sees, 0 to 1; infinite where none was looked at. */
    double share() {
        return share;
    }

    /** The point, mm. */
    Vector3D point() {
        return point;
    }

    /** Looks at the middle of a piece, near its corners, and near the middles of its sides. */
    void look(FlatPiece piece) {
        double[] middle = piece.middle();
        at(piece, middle[0], middle[1]);
        for (int i = 0; i < piece.size() && share > 0 && !stop.getAsBoolean(); i++) {
            int next = (i + 1) % piece.size();
            near(piece, piece.u(i), piece.v(i), middle);
            near(piece, 0.5 * (piece.u(i) + piece.u(next)), 0.5 * (piece.v(i) + piece.v(next)), middle);
        }
    }

    private void near(FlatPiece piece, double u, double v, double[] middle) {
        at(piece, u + DRAWN_IN * (middle[0] - u), v + DRAWN_IN * (middle[1] - v));
    }

    private void at(FlatPiece piece, double u, double v) {
        if (share <= 1 && stop.getAsBoolean()) {
            return;
        }
        Vector3D here = piece.frame().at(u, v);
        double seen = visible.from(here, piece.frame().normal()).areaFraction();
        if (seen < share) {
            share = seen;
            point = here;
        }
    }
}
