/**
 * Frames, outlines and planar meshes. A leaf: it imports nothing else of Darkrim.
 *
 * <p>In and out: points, frames and outlines. Main types: {@code Frame}, {@code Placement}, {@code Outline},
 * {@code Triangulation}, {@code UnitCircle} (sines and cosines that are the same on every machine).
 *
 * <p>It must not know: parts and light. Begin to read: {@code Frame}.
 */
package darkrim.geom;
