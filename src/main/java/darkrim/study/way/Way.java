package darkrim.study.way;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A way of light after one reflection: two straight lines that nothing blocks.
 *
 * @param onPupil where it leaves the pupil, mm; through a window where it seems to, straight on from where it is reflected
 * @param reflected where it is reflected, mm
 * @param arrives where it arrives, mm
 * @param carried how much light it carries, above 0, but for a factor that is the same for all ways of one search
 */
public record Way(Vector3D onPupil, Vector3D reflected, Vector3D arrives, double carried) {}
