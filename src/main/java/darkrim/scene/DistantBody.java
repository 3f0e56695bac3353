package darkrim.scene;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.SourceSpec;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A round body of uniform radiance so far away that it has the same direction everywhere, such as the Moon.
 *
 * <p>As a beam it is a disc that faces the origin from {@value #TIMES} times the reach of the scene: over the scene its direction then changes by
 * 1e-5 rad at most. The disc is as much wider, so that a point sees the disc wherever it would see the body: what is proved dark
 * under the disc is dark under the body.
 *
 * @param offAxis angle of its centre from +z, degrees, 0 to less than 90
 * @param azimuth direction of its centre about z, from +x toward +y, degrees
 * @param diameter angular diameter, degrees
 * @param entrance what its light must come through, if anything but the parts stops it
 */
public record DistantBody(double offAxis, double azimuth, double diameter, Optional<FieldLimit> entrance) {
    private static final double TIMES = 1e5;

    /**
     * @throws IllegalArgumentException if a part of the body stands at or below the focal plane, or the body has no size
     */
    public DistantBody {
        if (!(offAxis >= 0 && diameter > 0 && offAxis + diameter / 2 < 90 && Double.isFinite(azimuth))) {
            throw new IllegalArgumentException("no body above the focal plane: " + offAxis + " deg off axis, "
                    + diameter + " deg wide, azimuth " + azimuth + " deg");
        }
    }

    /** The body that a layout describes. */
    public static DistantBody of(SourceSpec.Distant spec) {
        return new DistantBody(
                spec.offAxis(), spec.azimuth(), spec.diameter(), spec.entrance().map(DistantBody::entrance));
    }

    private static FieldLimit entrance(SourceSpec.Entrance spec) {
        return new FieldLimit(
                spec.outline(),
                new Frame(spec.centre(), Vector3D.Unit.PLUS_X, Vector3D.Unit.PLUS_Y, Vector3D.Unit.PLUS_Z));
    }

    /** The same body in another direction, degrees. */
    public DistantBody at(double otherOffAxis, double otherAzimuth) {
        return new DistantBody(otherOffAxis, otherAzimuth, diameter, entrance);
    }

    /** Unit vector toward its centre. */
    public Vector3D direction() {
        double off = Math.toRadians(offAxis);
        double turn = Math.toRadians(azimuth);
        return Vector3D.of(
                StrictMath.sin(off) * StrictMath.cos(turn),
                StrictMath.sin(off) * StrictMath.sin(turn),
                StrictMath.cos(off));
    }

    /**
     * Where a drawing begins a ray from a body: at twice the reach of the parts from its end, near enough to be drawn.
     *
     * @param reach reach of the parts, mm
     * @param from where the ray begins, mm
     * @param to its end among the parts, mm
     */
    public static Vector3D drawn(double reach, Vector3D from, Vector3D to) {
        return to.add(from.subtract(to).normalize().multiply(2 * reach));
    }

    /** The same facets and surfaces in the light of the body. */
    public Scene over(Scene scene) {
        double reach = Math.max(scene.reach(), 1);
        double distance = TIMES * reach;
        double radius = (distance + reach) * StrictMath.tan(Math.toRadians(diameter / 2)) + reach;
        Vector3D toward = direction();
        Pupil pupil = new Pupil(Ring.disc(radius), Frame.about(toward.multiply(distance), toward.negate()));
        return scene.under(new Beam(pupil, entrance, OptionalDouble.empty()));
    }

    /**
     * Irradiance of a plane at the origin that faces the body, over {@link Scene#referenceIrradiance()}: what relative irradiance is
     * divided by to be over the irradiance of the body. A disc of half angle a gives pi sin2(a) for radiance 1 (any radiometry text).
     *
     * @param lit a scene that {@link #over} made
     */
    public static double facing(Scene lit) {
        double distance = lit.beam().pupil().frame().origin().norm();
        double radius = lit.beam().pupil().outline().reach();
        double sine = radius / Math.hypot(radius, distance);
        return Math.PI * sine * sine / lit.referenceIrradiance();
    }
}
