package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Looks for a counterexample on an even set of points: points of the faces, and points of the pupil or, where there is a field limit, lines
 * through points of it. Evenly spread by the R sequence (Roberts 2018; steps are powers of 1/phi_4, phi_4^5 = phi_4 + 1): no random numbers.
 * It finds what is plain at once; what is barely so is left to the cutting of pieces.
 */
final class LightScan {
    private static final double PHI = 1.1673039782614187;
    private static final double[] STEPS = {1 / PHI, 1 / (PHI * PHI), 1 / (PHI * PHI * PHI), 1 / (PHI * PHI * PHI * PHI)
    };

    private final Beam beam;
    private final Question question;
    private final List<Face> faces;
    private final double[] upTo;
    private long next = 1;

    LightScan(Beam beam, Question question, List<Face> faces) {
        this.beam = beam;
        this.question = question;
        this.faces = faces;
        upTo = new double[faces.size()];
        double sum = 0;
        for (int i = 0; i < upTo.length; i++) {
            sum += faces.get(i).piece().area();
            upTo[i] = sum;
        }
    }

    /** Tries the next points of the set. */
    Optional<WitnessRay> look(int count) {
        Optional<WitnessRay> found = Optional.empty();
        for (int i = 0; i < count && found.isEmpty() && upTo.length > 0; i++, next++) {
            Face face = faces.get(pick(next));
            double[] point = place(face.piece(), share(0), share(1));
            double[] start = start(face, point);
            if (start != null) {
                found = question.counterexample(
                        start, face, face.piece().frame().at(point[0], point[1]));
            }
        }
        return found;
    }

    private double share(int dimension) {
        double value = next * STEPS[dimension];
        return value - Math.floor(value);
    }

    private int pick(long number) {
        double value = number * 0.6180339887498949;
        double sum = (value - Math.floor(value)) * upTo[upTo.length - 1];
        int found = Arrays.binarySearch(upTo, sum);
        return Math.min(upTo.length - 1, found >= 0 ? found + 1 : -found - 1);
    }

    private double[] start(Face face, double[] point) {
        double[] at = new double[2];
        Optional<FieldLimit> limit = beam.fieldLimit();
        if (limit.isEmpty() || next % 2 == 0) {
            beam.pupil().outline().place(share(2), share(3), at);
            return at;
        }
        limit.get().outline().place(share(2), share(3), at);
        Vector3D through = limit.get().frame().at(at[0], at[1]);
        Vector3D end = face.piece().frame().at(point[0], point[1]);
        Frame pupil = beam.pupil().frame();
        double from = pupil.height(end);
        double to = pupil.height(through);
        if (Math.abs(from - to) < 1e-9 * (Math.abs(from) + Math.abs(to))) {
            return null;
        }
        Vector3D crossing = end.lerp(through, from / (from - to));
        at[0] = pupil.inU(crossing);
        at[1] = pupil.inV(crossing);
        return at;
    }

    /** A point of a convex polygon: one of its triangles by the first share, then within it. */
    private static double[] place(FlatPiece piece, double s, double t) {
        double sum = s * piece.area();
        int last = piece.size() - 2;
        int i = 1;
        double area = triangle(piece, i);
        while (i < last && sum > area) {
            sum -= area;
            area = triangle(piece, ++i);
        }
        double root = Math.sqrt(Math.min(1, area > 0 ? sum / area : 0.5));
        double a = 1 - root;
        double b = root * (1 - t);
        double c = root * t;
        return new double[] {
            a * piece.u(0) + b * piece.u(i) + c * piece.u(i + 1), a * piece.v(0) + b * piece.v(i) + c * piece.v(i + 1)
        };
    }

    private static double triangle(FlatPiece piece, int i) {
        return 0.5
                * ((piece.u(i) - piece.u(0)) * (piece.v(i + 1) - piece.v(0))
                        - (piece.v(i) - piece.v(0)) * (piece.u(i + 1) - piece.u(0)));
    }
}
