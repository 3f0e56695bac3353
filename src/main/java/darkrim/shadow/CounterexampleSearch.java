package darkrim.shadow;

import darkrim.scene.Scene;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Looks for one line for which a question does not hold: at the corners of a face, past the edges that keep a pair open, and now and then all over
 * the faces. Once one is found, it looks no further. One use, one thread.
 */
final class CounterexampleSearch {
    /** Of the edges that keep a pair open only so many are looked past. */
    static final int EDGES = 8;
    /** Lines tried for each pair that has been looked at: about as much work. */
    private static final int SCAN_LINES = 32;
    /** A line to the rim of a grown face ends this share of the way out, so that it lies within. */
    private static final double GROWN = 1 - 1e-9;
    /** A point at the corner of a face is drawn in by this, mm, so that it lies on the face. */
    private static final double DRAWN_IN = 1e-8;

    private final Question question;
    private final PupilPieces pupil;
    private final FacetEdges edges;
    private final double radius;
    private final LightScan scan;
    /** When that many pairs have been looked at, it is time for another look at the whole. */
    private long nextScan = 4;

    private Optional<WitnessRay> found = Optional.empty();

    /**
     * @param pupil pieces of the scene's pupil
     * @param edges edges of the scene's facets
     * @param radius by how much the faces are grown, mm
     * @param faces what is looked at from the pupil
     */
    CounterexampleSearch(
            Scene scene, Question question, PupilPieces pupil, FacetEdges edges, double radius, List<Face> faces) {
        this.question = question;
        this.pupil = pupil;
        this.edges = edges;
        this.radius = radius;
        this.scan = new LightScan(scene.covering(), question, faces);
    }

    /** The line, if one was found. */
    Optional<WitnessRay> found() {
        return found;
    }

    /** Looks all over the faces, where it is time for that: the more lines the longer the work takes. */
    void scan(long pairs) {
        // Of a face that is moved the place where it stands is not the place to look for light.
        if (pairs == nextScan && radius == 0) {
            nextScan *= 4;
            found = scan.look(SCAN_LINES * (int) Math.min(pairs, 4096));
        }
    }

    /** Tries the middle line and the lines that pass the edges in the way most nearly. */
    void alongEdges(Face face, Pair pair, Shaft shaft) {
        attempt(pair.pupil().middle(), face, pair.face().middleInSpace());
        Optional<Question.Aim> aim = question.aim(pair);
        if (aim.isPresent()) {
            Vector3D end = farthestCorner(pair.face(), aim.get().face());
            attempt(pupil.farthest(pair.pupil(), aim.get().pupil()), face, end);
        }
        for (int i = 0; i < Math.min(EDGES, question.openCount()) && found.isEmpty(); i++) {
            int side = shaft.nearestSide(edges.ends(), 6 * question.open(i));
            if (side >= 0) {
                Vector3D normal = shaft.side(side);
                Vector3D end = farthestCorner(pair.face(), normal);
                attempt(pupil.farthest(pair.pupil(), normal), face, end.add(normal.multiply(radius * GROWN)));
            }
        }
    }

    /** Tries lines from the rim and the middle of a piece of the pupil to the corners and the middle of a face that is not moved. */
    void atCorners(Face face, FlatPiece pupilPiece) {
        FlatPiece piece = face.piece();
        for (int i = -1; radius == 0 && i < piece.size() && found.isEmpty(); i++) {
            Vector3D end = i < 0 ? piece.middleInSpace() : drawnIn(piece, i);
            attempt(pupilPiece.middle(), face, end);
            int step = Math.max(1, pupilPiece.size() / 16);
            for (int k = 0; k < pupilPiece.size() && found.isEmpty(); k += step) {
                attempt(pupil.drawnIn(pupilPiece, k), face, end);
            }
        }
    }

    private void attempt(double[] start, Face face, Vector3D end) {
        if (found.isEmpty()) {
            found = question.counterexample(start, face, end);
        }
    }

    private static Vector3D farthestCorner(FlatPiece piece, Vector3D normal) {
        double a = normal.dot(piece.frame().u());
        double b = normal.dot(piece.frame().v());
        int best = 0;
        for (int i = 1; i < piece.size(); i++) {
            if (a * piece.u(i) + b * piece.v(i) > a * piece.u(best) + b * piece.v(best)) {
                best = i;
            }
        }
        return drawnIn(piece, best);
    }

    private static Vector3D drawnIn(FlatPiece piece, int corner) {
        double[] middle = piece.middle();
        double du = middle[0] - piece.u(corner);
        double dv = middle[1] - piece.v(corner);
        double share = Math.min(1e-3, DRAWN_IN / Math.max(DRAWN_IN, Math.hypot(du, dv)));
        return piece.frame().at(piece.u(corner) + share * du, piece.v(corner) + share * dv);
    }
}
