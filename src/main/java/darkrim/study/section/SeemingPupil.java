package darkrim.study.section;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.geom.UnitCircle;
import darkrim.scene.Beam;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * The pupil as it seems to one point. Without a window that is the pupil. Through a window each point of it seems nearer, and farther aside by what depends on
 * the angle, so that the outline is another one for each point; to a line of sight it is what the pupil is without a window.
 */
final class SeemingPupil {
    /** Places at which a stretch of the rim is looked at, before the farthest is closed in on. */
    private static final int STEPS = 64;

    /** Halvings, so to speak: the place is then found to the root of rounding, and how far it is to rounding. */
    private static final int NARROWINGS = 40;

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private final Beam beam;
    private final Vector3D eye;
    private final Frame frame;

    /**
     * @param beam the beam
     * @param eye where the pupil is seen from, mm
     */
    SeemingPupil(Beam beam, Vector3D eye) {
        this.beam = beam;
        this.eye = eye;
        Frame own = beam.pupil().frame();
        frame = beam.window()
                .map(window -> new Frame(
                        own.origin().subtract(Vector3D.of(0, 0, window.shift())), own.u(), own.v(), own.normal()))
                .orElse(own);
    }

    /** The plane in which it seems to lie. */
    Frame frame() {
        return frame;
    }

    /** Where its middle seems to be, mm. */
    Vector3D middle() {
        return beam.seems(eye, beam.pupil().frame().origin());
    }

    /** The point of its rim that seems farthest in a direction of its own plane, mm. */
    Vector3D rim(Vector2D toward) {
        if (beam.window().isEmpty()) {
            return PupilRim.point(beam.pupil(), toward);
        }
        Outline outline = beam.pupil().outline();
        if (outline instanceof Ring ring) {
            return farthest(turn -> onRing(ring, turn), 4 * STEPS, toward);
        }
        Polygon polygon = (Polygon) outline;
        Vector3D best = null;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < polygon.corners().size(); i++) {
            Vector2D from = polygon.corners().get(i);
            Vector2D to = polygon.corners().get((i + 1) % polygon.corners().size());
            Vector3D point = farthest(share -> from.lerp(to, Math.max(0, Math.min(1, share))), STEPS, toward);
            if (far(point, toward) > most) {
                most = far(point, toward);
                best = point;
            }
        }
        return best;
    }

    private static Vector2D onRing(Ring ring, double turn) {
        double share = turn - Math.floor(turn);
        return Vector2D.of(UnitCircle.cosine(share), UnitCircle.sine(share)).multiply(ring.radius());
    }

    /**
     * The farthest point of a stretch of the rim: the farthest of evenly spaced ones, closed in on by the golden section.
     *
     * @param rim the points of the stretch in the plane of the pupil, for 0 to 1; a little less and more must do no harm
     */
    private Vector3D farthest(DoubleFunction<Vector2D> rim, int steps, Vector2D toward) {
        DoubleUnaryOperator reach = share -> far(seeming(rim.apply(share)), toward);
        int best = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= steps; i++) {
            double here = reach.applyAsDouble((double) i / steps);
            if (here > most) {
                most = here;
                best = i;
            }
        }
        double low = (best - 1.0) / steps;
        double high = (best + 1.0) / steps;
        for (int i = 0; i < NARROWINGS; i++) {
            double one = high - GOLDEN * (high - low);
            double other = low + GOLDEN * (high - low);
            if (reach.applyAsDouble(one) < reach.applyAsDouble(other)) {
                low = one;
            } else {
                high = other;
            }
        }
        double share = (low + high) / 2;
        // A corner itself, where it is the farthest.
        return seeming(rim.apply(reach.applyAsDouble(share) > most ? share : (double) best / steps));
    }

    private Vector3D seeming(Vector2D onPupil) {
        return beam.seems(eye, beam.pupil().frame().at(onPupil.getX(), onPupil.getY()));
    }

    private double far(Vector3D seeming, Vector2D toward) {
        return toward.getX() * frame.inU(seeming) + toward.getY() * frame.inV(seeming);
    }
}
