package darkrim.shadow;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The margin at a place on the rim of a surface: how far the border of light lies from it in the plane of the surface.
 *
 * @param point the middle of a side, or a corner, mm
 * @param outward unit vector in the plane of the surface: square to the side, or half-way between the two sides at a corner
 * @param corner whether it is a corner
 * @param margin positive: the distance to the nearest point where the requirement is broken; negative: how far in along the direction it is
 *     met again
 */
public record RimMargin(Vector3D point, Vector3D outward, boolean corner, Margin margin) {}
