package darkrim.layout;

import darkrim.material.Material;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * How a part contracts.
 *
 * @param material what it is made of
 * @param heldAt the point about which it contracts, in its own frame, mm
 * @param heldBy name of the part that holds it there and takes the point with it; absent where the point stays
 */
public record Mounting(Material material, Vector3D heldAt, Optional<String> heldBy) {}
