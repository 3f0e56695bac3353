package darkrim.geom.mesh;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A name that a designer gave to a face, by a place on it. The same face is found in another revision of the file as long as it has not moved
 * too far.
 *
 * @param name the name
 * @param at a place on the face, mm in the frame of the mesh
 * @param facing the direction that the face has there, any length but 0
 */
public record FaceAnchor(String name, Vector3D at, Vector3D facing) {}
