package darkrim.view.parts;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What a line of sight meets first of what is shown.
 *
 * @param surface number of the surface; empty on a cut face
 * @param facet the facet met, of a cut face the one through which the line leaves the solid
 * @param name name of the surface, or of the solid that is cut
 * @param point where, mm
 * @param distance how far along the line, mm
 */
public record Hit(Optional<Integer> surface, int facet, String name, Vector3D point, double distance) {}
