package darkrim.geom.mesh;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A face of a mesh: what it is called and how large it is, in the frame of the mesh.
 *
 * @param name its path below the part
 * @param group what the file tells of it
 * @param facets its facets, by number
 * @param area its area, mm2
 * @param centre the middle of its area, mm
 * @param normal the direction that it faces on the whole, unit length; absent where it goes around, as a tube does
 * @param flat whether it lies in a plane, to a thousandth of its reach
 * @param low least coordinates, mm
 * @param high greatest coordinates, mm
 * @param on a point of the face itself, in the middle of its largest facet, mm
 * @param onNormal the direction that it faces there, unit length
 */
public record MeshFace(
        String name,
        FacetMesh.Group group,
        int[] facets,
        double area,
        Vector3D centre,
        Optional<Vector3D> normal,
        boolean flat,
        Vector3D low,
        Vector3D high,
        Vector3D on,
        Vector3D onNormal) {
    /** The same under another name. */
    MeshFace named(String other) {
        return new MeshFace(other, group, facets, area, centre, normal, flat, low, high, on, onNormal);
    }
}
