package darkrim.study.path;

import darkrim.light.Estimate;
import darkrim.light.ReflectionPath;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A path of light to a receiver, and what a designer wants to know of it.
 *
 * @param path the surfaces that reflect, in the order in which light meets them
 * @param irradiance what it gives the receiver, relative irradiance
 * @param share that over all light reflected up to the number of times asked for
 * @param incidences angles of incidence at each of the surfaces
 * @param onReceiver where it is brightest on the receiver
 * @param onLast where on the surface met last most of it comes from
 * @param example a way that light takes: on the pupil, on each surface, on the receiver, mm; by the brightest cell of the receiver
 */
public record TopPath(
        ReflectionPath path,
        Estimate irradiance,
        double share,
        List<Incidences> incidences,
        Spot onReceiver,
        Spot onLast,
        List<Vector3D> example) {
    /** Copies the lists. */
    public TopPath {
        incidences = List.copyOf(incidences);
        example = List.copyOf(example);
    }
}
