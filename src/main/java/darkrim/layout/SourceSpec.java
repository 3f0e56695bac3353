package darkrim.layout;

import darkrim.diagnostic.Place;
import darkrim.geom.Outline;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A source of light beside the beam: it is looked at by studies of their own and takes no part in a check. */
public sealed interface SourceSpec {
    /** Its name in the layout. */
    String name();

    /** Where it stands in the file. */
    Place place();

    /**
     * A star: light that fills the pupil evenly and goes from each of its points toward one focus.
     *
     * @param name its name
     * @param focus where its light comes together, mm
     * @param flux flux that comes through the pupil, W, where stated
     * @param place where it stands in the file
     */
    record Star(String name, Vector3D focus, Optional<Double> flux, Place place) implements SourceSpec {}

    /**
     * A body so far away that it has the same direction everywhere, of uniform radiance.
     *
     * @param name its name
     * @param offAxis angle of its centre from +z, degrees
     * @param azimuth direction of its centre about z, from +x toward +y, degrees
     * @param diameter angular diameter, degrees
     * @param irradiance irradiance of a plane that faces it, W/m2, where stated
     * @param entrance what its light must come through, if anything but the parts stops it
     * @param place where it stands in the file
     */
    record Distant(
            String name,
            double offAxis,
            double azimuth,
            double diameter,
            Optional<Double> irradiance,
            Optional<Entrance> entrance,
            Place place)
            implements SourceSpec {}

    /**
     * An opening in a plane parallel to the focal plane through which light must come.
     *
     * @param outline its shape in its own plane, mm
     * @param centre its centre, mm
     */
    record Entrance(Outline outline, Vector3D centre) {}
}
