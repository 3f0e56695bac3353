package darkrim.scene;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The light that comes in: a pupil of uniform radiance and, where there is one, a limit of the field.
 *
 * @param pupil where the light comes from; all of it above the focal plane
 * @param fieldLimit what the light must pass, if anything
 * @param radiance radiance of the pupil, W/(m2 sr), where known: results are then also given in W/m2
 * @param window a plate between the parts and the pupil; relative irradiance is relative to the pupil without it
 */
public record Beam(Pupil pupil, Optional<FieldLimit> fieldLimit, OptionalDouble radiance, Optional<Window> window) {
    /** Points on a circle; the periodic trapezoid rule is exact to rounding far below this for a pupil that is seen within 60 deg. */
    private static final int CIRCLE_POINTS = 4096;

    /**
     * @throws IllegalArgumentException if the pupil does not lie above the window and parallel to it
     */
    public Beam {
        if (window.isPresent()
                && !(pupil.frame().normal().getZ() == -1
                        && pupil.frame().origin().getZ() > window.get().top())) {
            throw new IllegalArgumentException("the pupil must lie above the window and parallel to it");
        }
    }

    /** A beam without a window. */
    public Beam(Pupil pupil, Optional<FieldLimit> fieldLimit, OptionalDouble radiance) {
        this(pupil, fieldLimit, radiance, Optional.empty());
    }

    /** The same through a window. */
    public Beam through(Window plate) {
        return new Beam(pupil, fieldLimit, radiance, Optional.of(plate));
    }

    /**
     * Where on the plane of the pupil a line comes from.
     *
     * @param at a point of it below the window, mm
     * @param way its direction there, toward the pupil, any length
     */
    public Vector3D origin(Vector3D at, Vector3D way) {
        double height = pupil.frame().height(at);
        Vector3D normal = pupil.frame().normal();
        if (window.isEmpty()) {
            return at.add(way.multiply(-height / normal.dot(way)));
        }
        double level = Math.hypot(way.getX(), way.getY());
        double aside = window.get().aside(height, level / way.getZ());
        double along = level > 0 ? aside / level : 0;
        return at.add(Vector3D.of(along * way.getX(), along * way.getY(), height));
    }

    /**
     * The way of light along a line, as far as it is not straight: where it leaves the plane of the pupil, and where it meets the upper and the lower face of
     * the window, if there is one. From the last of these points it runs straight to the point below.
     *
     * @param at a point of the line below the window, mm
     * @param way its direction there, toward the pupil, any length
     */
    public List<Vector3D> course(Vector3D at, Vector3D way) {
        Vector3D from = origin(at, way);
        if (window.isEmpty()) {
            return List.of(from);
        }
        Window plate = window.get();
        Vector3D level = Vector3D.of(way.getX() / way.getZ(), way.getY() / way.getZ(), 0);
        Vector3D low = at.add(level.add(Vector3D.Unit.PLUS_Z).multiply(plate.bottom() - at.getZ()));
        Vector3D high = low.add(level.multiply(plate.thickness() * plate.inside(level.norm())))
                .add(Vector3D.of(0, 0, plate.thickness()));
        return List.of(from, high, low);
    }

    /**
     * Where a point of the pupil seems to be: the way of light from there ends in a straight line, which meets the plane in which the pupil seems to lie here.
     *
     * @param at where it is seen from, below the window, mm
     * @param onPupil a point in the plane of the pupil, mm
     */
    public Vector3D seems(Vector3D at, Vector3D onPupil) {
        if (window.isEmpty()) {
            return onPupil;
        }
        double height = onPupil.getZ() - at.getZ();
        Vector3D level = Vector3D.of(onPupil.getX() - at.getX(), onPupil.getY() - at.getY(), 0);
        double aside = level.norm();
        double seeming = height - window.get().shift();
        double along = aside > 0 ? window.get().slope(height, aside) * seeming / aside : 0;
        return at.add(level.multiply(along)).add(Vector3D.of(0, 0, seeming));
    }

    /** Whether a line comes from the pupil, beyond rounding; for the parameters see {@link #origin}. */
    public boolean surelyShines(Vector3D at, Vector3D way) {
        Vector3D from = origin(at, way);
        double u = pupil.frame().inU(from);
        double v = pupil.frame().inV(from);
        double doubt = 1e-9 * (pupil.outline().reach() + at.distance(from));
        return pupil.outline().contains(u - doubt, v - doubt)
                && pupil.outline().contains(u - doubt, v + doubt)
                && pupil.outline().contains(u + doubt, v - doubt)
                && pupil.outline().contains(u + doubt, v + doubt);
    }

    /** A beam with neither field limit nor radiance. */
    public static Beam of(Pupil pupil) {
        return new Beam(pupil, Optional.empty(), OptionalDouble.empty());
    }

    /**
     * Irradiance of the unobstructed pupil at the origin of the layout, facing +z, for radiance 1: what relative irradiance is relative
     * to. The field limit is left out.
     *
     * <p>Contour integral over the outline: E = (L/2) n . contour integral of (r x dr)/r^2, for straight sides (L/2) sum theta_i n . gamma_i.
     * Lambert 1760; Howell, Menguc, Siegel, Thermal Radiation Heat Transfer, ch. 5 (chapter from memory).
     *
     * @return irradiance over radiance, sr; 0 or less if the pupil does not shine on the origin
     */
    public double referenceIrradiance() {
        Outline outline = pupil.outline();
        double sum = 0;
        if (outline instanceof Ring ring) {
            sum = contour(circle(ring.radius()));
            if (ring.hole() > 0) {
                sum -= contour(circle(ring.hole()));
            }
        } else if (outline instanceof Polygon polygon) {
            sum = contour(polygon.corners().stream()
                    .map(corner -> pupil.frame().at(corner.getX(), corner.getY()))
                    .toList());
        }
        return sum;
    }

    /** The circle as a many-sided contour; sides are short enough for the polygon formula to stand for the arc. */
    private List<Vector3D> circle(double radius) {
        Frame frame = pupil.frame();
        // The polygon of equal area about the circle: its contour integral differs by the fourth power of the step.
        double step = 2 * Math.PI / CIRCLE_POINTS;
        double equalArea = radius * Math.sqrt(step / StrictMath.sin(step));
        return IntStream.range(0, CIRCLE_POINTS)
                .mapToObj(i -> frame.at(equalArea * StrictMath.cos(i * step), equalArea * StrictMath.sin(i * step)))
                .toList();
    }

    /** Seen from the origin facing +z, counter-clockwise about the pupil's normal, which points to the observer. */
    private static double contour(List<Vector3D> corners) {
        double sum = 0;
        for (int i = 0; i < corners.size(); i++) {
            Vector3D a = corners.get(i);
            Vector3D b = corners.get((i + 1) % corners.size());
            Vector3D cross = a.cross(b);
            double sine = cross.norm();
            if (sine > 0) {
                sum += StrictMath.atan2(sine, a.dot(b)) * cross.getZ() / sine;
            }
        }
        return -sum / 2;
    }
}
