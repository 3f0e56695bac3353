package darkrim.shadow;

import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Pupil;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Guesses how far sides of an opening must be moved for light to reach a point: as if nothing but this opening stood in the way. A guess
 * saves work and proves nothing.
 */
final class OpeningGuess {
    private static final int AROUND = 32;
    private static final int NARROWINGS = 45;
    private static final double GOLDEN = 0.5 * (Math.sqrt(5) - 1);

    private final Pupil pupil;
    private final MovedSides sides;
    private final boolean[] moved;

    OpeningGuess(Pupil pupil, MovedSides sides, boolean[] moved) {
        this.pupil = pupil;
        this.sides = sides;
        this.moved = moved;
    }

    /** The guesses for the corners and the middles of the sides of faces, mm outward; those that are not finite are left out. */
    List<Double> of(List<Face> faces) {
        List<Double> guesses = new ArrayList<>();
        for (Face face : faces) {
            FlatPiece piece = face.piece();
            for (int i = 0; i < piece.size(); i++) {
                int next = (i + 1) % piece.size();
                Vector3D from = piece.frame().at(piece.u(i), piece.v(i));
                Vector3D to = piece.frame().at(piece.u(next), piece.v(next));
                guesses.add(of(from));
                guesses.add(of(from.lerp(to, 0.5)));
            }
        }
        guesses.removeIf(guess -> !Double.isFinite(guess));
        return guesses;
    }

    private double of(Vector3D point) {
        if (pupil.outline() instanceof Polygon polygon) {
            double least = Double.POSITIVE_INFINITY;
            for (Vector2D corner : polygon.corners()) {
                least = Math.min(least, needed(point, pupil.frame().at(corner.getX(), corner.getY())));
            }
            return least;
        }
        double radius = ((Ring) pupil.outline()).radius();
        double best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < AROUND; i++) {
            double angle = 2 * Math.PI * i / AROUND;
            double needed = needed(point, radius, angle);
            if (needed < least) {
                least = needed;
                best = angle;
            }
        }
        double low = best - 2 * Math.PI / AROUND;
        double high = best + 2 * Math.PI / AROUND;
        for (int i = 0; i < NARROWINGS; i++) {
            double a = high - GOLDEN * (high - low);
            double b = low + GOLDEN * (high - low);
            if (needed(point, radius, a) < needed(point, radius, b)) {
                high = b;
            } else {
                low = a;
            }
        }
        return Math.min(least, needed(point, radius, 0.5 * (low + high)));
    }

    private double needed(Vector3D point, double radius, double angle) {
        return needed(point, pupil.frame().at(radius * StrictMath.cos(angle), radius * StrictMath.sin(angle)));
    }

    /** How far the sides must be moved for one line to pass; infinite if another side is in its way. */
    private double needed(Vector3D point, Vector3D start) {
        double needed = Double.NEGATIVE_INFINITY;
        for (List<Vector3D> loop : sides.loops()) {
            double a = point.subtract(loop.get(0)).dot(sides.normal());
            double b = start.subtract(loop.get(0)).dot(sides.normal());
            if (!(a * b < 0)) {
                return Double.POSITIVE_INFINITY;
            }
            Vector3D crossing = point.lerp(start, a / (a - b));
            for (int i = 0; i < sides.count(); i++) {
                double beyond = crossing.subtract(loop.get(i)).dot(sides.outward(i));
                if (moved[i]) {
                    needed = Math.max(needed, beyond);
                } else if (beyond > 0) {
                    return Double.POSITIVE_INFINITY;
                }
            }
        }
        return needed;
    }
}
