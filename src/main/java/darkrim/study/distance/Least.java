package darkrim.study.distance;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The least distance between two surfaces.
 *
 * @param millimetres the distance with the coatings of both taken off, mm; 0 where they touch or run into one another
 * @param first number of the facet of the first surface
 * @param second number of the facet of the second surface
 * @param onFirst the point of the first surface that comes nearest, where it then is, mm; without the coating
 * @param onSecond the point of the second surface, mm
 * @param travel share of the way that the first surface has then been moved, 0 to 1
 */
public record Least(double millimetres, int first, int second, Vector3D onFirst, Vector3D onSecond, double travel) {}
