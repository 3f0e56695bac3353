package darkrim.shadow;

import darkrim.geom.Frame;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Asks that every line that makes at least an angle with the axis of the pupil be blocked.
 *
 * <p>Over all pairs of a point s of the pupil and a point r of the face, |s - r| across the axis less tan(angle) times the distance along it is a
 * convex function of (s, r), so its greatest value over a shaft is taken at a pair of corners: where it is negative there, every line of the
 * shaft makes less than the angle.
 */
final class IsDarkBeyond implements Question {
    private final Question dark;
    private final Frame pupil;
    private final double tangent;
    private final double margin;

    /**
     * @param dark asks the same of all lines
     * @param pupil the plane of the pupil; its normal is the axis
     * @param angle the angle, degrees, 0 to below 90
     */
    IsDarkBeyond(Question dark, Frame pupil, double angle, Tolerance tolerance) {
        this.dark = dark;
        this.pupil = pupil;
        tangent = StrictMath.tan(Math.toRadians(angle));
        margin = tolerance.rounding() * (1 + tangent);
    }

    @Override
    public boolean holds(Shaft shaft, Pair pair, int[] facets) {
        return staysBelow(shaft) || dark.holds(shaft, pair, facets);
    }

    private boolean staysBelow(Shaft shaft) {
        for (int i = 0; i < shaft.pupil().length; i += 3) {
            for (int k = 0; k < shaft.face().length; k += 3) {
                if (!(excess(point(shaft.pupil(), i), point(shaft.face(), k)) < -margin)) {
                    return false;
                }
            }
        }
        return true;
    }

    private static Vector3D point(double[] points, int at) {
        return Vector3D.of(points[at], points[at + 1], points[at + 2]);
    }

    /** Across the axis less the tangent times along it, mm: 0 or more for a line that makes at least the angle. */
    private double excess(Vector3D from, Vector3D to) {
        Vector3D way = to.subtract(from);
        double along = way.dot(pupil.normal());
        Vector3D across = way.subtract(pupil.normal().multiply(along));
        return across.norm() - tangent * along;
    }

    @Override
    public boolean holdsAfterAll(Shaft shaft, Pair pair, int[] facets) {
        return dark.holdsAfterAll(shaft, pair, facets);
    }

    @Override
    public int openCount() {
        return dark.openCount();
    }

    @Override
    public int open(int number) {
        return dark.open(number);
    }

    @Override
    public Optional<WitnessRay> counterexample(double[] pupilPoint, Face face, Vector3D end) {
        return excess(pupil.at(pupilPoint[0], pupilPoint[1]), end) < 0
                ? Optional.empty()
                : dark.counterexample(pupilPoint, face, end);
    }

    /** Toward the other side of the pupil: the line that makes the largest angle. */
    @Override
    public Optional<Aim> aim(Pair pair) {
        Vector3D away = pair.pupil().middleInSpace().subtract(pair.face().middleInSpace());
        Vector3D across = away.subtract(pupil.normal().multiply(away.dot(pupil.normal())));
        return across.norm() > 0 ? Optional.of(new Aim(across, across.negate())) : Optional.empty();
    }
}
