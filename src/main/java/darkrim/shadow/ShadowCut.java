package darkrim.shadow;

import darkrim.scene.Pupil;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Cuts a cell of the pupil along the edge of a shadow: a plane through a side of a facet that touches a piece of a surface, the facet on one
 * side of it and the piece on the other. What lies on the side of the piece is not hidden by that facet. Only a choice of where to cut: what
 * is seen is proved afterwards. One thread.
 */
final class ShadowCut {
    /** The cut keeps this clear of the shadow, as a share of the reach of the pupil, so that a proof finds room. */
    private static final double CLEAR = 1e-6;
    /** Less than this share of a cell is not worth a cut. */
    private static final double WORTH = 0.02;
    /** Facets beyond so many are not looked at. */
    private static final int MOST_FACETS = 16;

    private final double[] corners;
    private final Pupil pupil;
    private final double margin;
    private final double flat;
    private long steps;

    /**
     * @param corners nine coordinates a facet; not changed
     */
    ShadowCut(double[] corners, Pupil pupil) {
        this.corners = corners;
        this.pupil = pupil;
        margin = CLEAR * pupil.outline().reach();
        flat = 1e-12 * (pupil.frame().origin().norm() + pupil.outline().reach());
    }

    /** Corners held against a plane so far: what it costs, the same on every machine. */
    long steps() {
        return steps;
    }

    /**
     * The two parts of a cell, the clear one last; empty if no cut is worth it.
     *
     * @param cell the cell
     * @param piece the piece of a surface
     * @param facets numbers of the facets in the way
     */
    List<FlatPiece> cut(FlatPiece cell, FlatPiece piece, List<Integer> facets) {
        double[] best = null;
        double most = WORTH * cell.area();
        double enough = (1 - WORTH) * cell.area();
        for (int f : facets.subList(0, Math.min(MOST_FACETS, facets.size()))) {
            for (int k = 0; k < 3; k++) {
                for (int i = 0; i < piece.size(); i++) {
                    double[] line = line(f, k, piece, i);
                    FlatPiece clear = line.length == 0 ? null : cell.clip(line[0], line[1], line[2] - margin);
                    double area = clear == null ? 0 : clear.area();
                    if (area > most && area < enough) {
                        most = area;
                        best = line;
                    }
                }
            }
        }
        if (best == null) {
            return List.of();
        }
        FlatPiece rest = cell.clip(-best[0], -best[1], margin - best[2]);
        FlatPiece clear = cell.clip(best[0], best[1], best[2] - margin);
        return rest == null ? List.of() : List.of(rest, clear);
    }

    /** Where the plane through side k of a facet and corner i of the piece meets the plane of the pupil: a u + b v at most c is clear. */
    private double[] line(int f, int k, FlatPiece piece, int i) {
        Vector3D eye = point(piece.space(), 3 * i);
        Vector3D start = point(corners, 9 * f + 3 * k).subtract(eye);
        Vector3D end = point(corners, 9 * f + 3 * ((k + 1) % 3)).subtract(eye);
        Vector3D third = point(corners, 9 * f + 3 * ((k + 2) % 3)).subtract(eye);
        Vector3D across = start.cross(end);
        double size = across.norm();
        if (!(size > 0)) {
            return new double[0];
        }
        Vector3D normal = across.multiply((across.dot(third) > 0 ? 1 : -1) / size);
        for (int j = 0; j < piece.size(); j++) {
            steps++;
            if (normal.dot(point(piece.space(), 3 * j).subtract(eye)) > flat) {
                return new double[0];
            }
        }
        double a = normal.dot(pupil.frame().u());
        double b = normal.dot(pupil.frame().v());
        double steep = Math.hypot(a, b);
        if (!(steep > 0)) {
            return new double[0];
        }
        double c = normal.dot(eye.subtract(pupil.frame().origin()));
        return new double[] {a / steep, b / steep, c / steep};
    }

    private static Vector3D point(double[] coordinates, int at) {
        return Vector3D.of(coordinates[at], coordinates[at + 1], coordinates[at + 2]);
    }
}
