package darkrim.shadow;

import darkrim.geom.Frame;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Lambert's contour integral: straight stretches in closed form, arcs by Gauss-Legendre to rounding. */
final class IrradianceSum implements PupilView.Rim {
    /** Positive nodes and weights of the rule of 16 points; Abramowitz and Stegun, table 25.4. */
    private static final double[] NODES = {
        0.09501250983763744, 0.2816035507792589, 0.45801677765722737, 0.6178762444026438,
        0.755404408355003, 0.8656312023878318, 0.9445750230732326, 0.9894009349916499
    };

    private static final double[] WEIGHTS = {
        0.1894506104550685, 0.18260341504492358, 0.16915651939500254, 0.14959598881657674,
        0.12462897125553388, 0.09515851168249279, 0.062253523938647894, 0.027152459411754096
    };

    /** A panel is at most this long over its distance from the point: the rule is then exact to rounding. */
    private static final double LONGEST = 0.75;

    private static final int MOST_PANELS = 4096;

    private final Vector3D normal;
    /** The pupil's frame seen from the point. */
    private final Vector3D origin;

    private final Vector3D u;
    private final Vector3D v;
    private double sum;

    IrradianceSum(Frame frame, Vector3D point, Vector3D normal) {
        this.normal = normal;
        origin = frame.origin().subtract(point);
        u = frame.u();
        v = frame.v();
    }

    /** The rim runs counter-clockwise about the pupil's normal, which points to the observer: clockwise for the formula. */
    double irradiance() {
        return -0.5 * sum;
    }

    @Override
    public void straight(double u0, double v0, double u1, double v1) {
        Vector3D a = at(u0, v0);
        Vector3D b = at(u1, v1);
        Vector3D cross = a.cross(b);
        double sine = cross.norm();
        if (sine > 0) {
            sum += StrictMath.atan2(sine, a.dot(b)) * cross.dot(normal) / sine;
        }
    }

    @Override
    public void arc(Circle circle, double from, double to) {
        Vector3D middle = at(circle.u(), circle.v());
        double height = Math.abs(middle.dot(u.cross(v)));
        double across = Math.hypot(middle.dot(u), middle.dot(v));
        double nearest = Math.hypot(height, across - circle.radius());
        double length = Math.abs(to - from) * circle.radius();
        int panels =
                (int) Math.min(MOST_PANELS, Math.ceil(Math.max(length / (LONGEST * nearest), Math.abs(to - from))));
        double step = (to - from) / panels;
        for (int i = 0; i < panels; i++) {
            double centre = from + (i + 0.5) * step;
            for (int k = 0; k < NODES.length; k++) {
                double offset = 0.5 * step * NODES[k];
                sum += 0.5 * step * WEIGHTS[k] * (density(circle, centre - offset) + density(circle, centre + offset));
            }
        }
    }

    private double density(Circle circle, double angle) {
        double cosine = StrictMath.cos(angle);
        double sine = StrictMath.sin(angle);
        Vector3D r = at(circle.u() + circle.radius() * cosine, circle.v() + circle.radius() * sine);
        Vector3D dr = Vector3D.Sum.create()
                .addScaled(-circle.radius() * sine, u)
                .addScaled(circle.radius() * cosine, v)
                .get();
        return r.cross(dr).dot(normal) / r.normSq();
    }

    private Vector3D at(double inU, double inV) {
        return Vector3D.Sum.create()
                .add(origin)
                .addScaled(inU, u)
                .addScaled(inV, v)
                .get();
    }
}
