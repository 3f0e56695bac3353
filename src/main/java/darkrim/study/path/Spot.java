package darkrim.study.path;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The cell of a surface where a path's light is densest.
 *
 * @param centre the middle of the light in it, mm
 * @param share of the path's light, what passes by this cell, 0 to 1
 * @param area area of the cell, mm2
 */
public record Spot(Vector3D centre, double share, double area) {}
