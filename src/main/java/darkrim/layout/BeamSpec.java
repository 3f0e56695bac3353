package darkrim.layout;

import darkrim.diagnostic.Place;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The light that comes in.
 *
 * @param pupil where it comes from
 * @param field what it must pass, if anything
 * @param radiance radiance of the pupil, W/(m2 sr), where stated
 * @param window a plate that it passes, if any
 * @param place where the beam stands in the file
 */
public record BeamSpec(
        PupilSpec pupil,
        Optional<FieldSpec> field,
        Optional<Double> radiance,
        Optional<WindowSpec> window,
        Place place) {
    /** Stands in a partial layout for a beam that could not be read; nothing is computed from a partial layout. */
    public static final BeamSpec UNREAD = new BeamSpec(
            new PupilSpec(Ring.disc(1), Vector3D.of(0, 0, 1), 0, 0), Optional.empty(), Optional.empty(), Place.IN_CODE);

    /** A beam without a window. */
    public BeamSpec(PupilSpec pupil, Optional<FieldSpec> field, Optional<Double> radiance, Place place) {
        this(pupil, field, radiance, Optional.empty(), place);
    }

    /**
     * A plane plate parallel to the focal plane, above all parts and below the pupil.
     *
     * @param name its name
     * @param bottom height of its lower face above the focal plane, mm
     * @param thickness thickness, mm
     * @param index refractive index, at least 1
     * @param lower reflectance of the lower face, where it is not Fresnel's
     * @param upper reflectance of the upper face, likewise
     * @param internal share of light that one crossing along z leaves
     * @param place where it stands in the file
     */
    public record WindowSpec(
            String name,
            double bottom,
            double thickness,
            double index,
            Optional<Double> lower,
            Optional<Double> upper,
            double internal,
            Place place) {}

    /**
     * A pupil of uniform radiance.
     *
     * @param outline its shape in its own plane, mm; u is the layout's x and v its y before tilting
     * @param centre its centre, mm; z is its distance from the focal plane
     * @param tiltAboutX first turned by this about the layout's x axis, degrees
     * @param tiltAboutY then turned by this about the layout's y axis, degrees
     */
    public record PupilSpec(Outline outline, Vector3D centre, double tiltAboutX, double tiltAboutY) {
        /** Height of its lowest point above the focal plane, mm. */
        public double lowest() {
            return centre.getZ() - droop();
        }

        /**
         * How far the lowest point lies below the centre, mm: a turn about x by a, then about y by b, takes (u, v) to z = v sin a cos b - u sin b.
         */
        private double droop() {
            double alongU = -StrictMath.sin(Math.toRadians(tiltAboutY));
            double alongV = StrictMath.sin(Math.toRadians(tiltAboutX)) * StrictMath.cos(Math.toRadians(tiltAboutY));
            if (outline instanceof Ring ring) {
                return ring.radius() * Math.hypot(alongU, alongV);
            }
            return ((Polygon) outline)
                    .corners().stream()
                            .mapToDouble(corner -> -(alongU * corner.getX() + alongV * corner.getY()))
                            .max()
                            .orElseThrow();
        }
    }

    /**
     * A limit of the field, in a plane parallel to the focal plane.
     *
     * @param outline its shape in its own plane, mm
     * @param centre its centre, mm; z is the height of the plane above the focal plane, 0 for the focal plane itself
     */
    public record FieldSpec(Outline outline, Vector3D centre) {}
}
