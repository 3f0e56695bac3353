package darkrim.geom.mesh;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A face of a mesh: what it is called and how large it is, in the frame of the mesh. Immutable. */
public final class MeshFace {
    private final String name;
    private final FacetMesh.Group group;
    private final int[] facets;
    private final Size size;

    /**
     * Where a face lies and how large it is.
     *
     * @param area its area, mm2
     * @param centre the middle of its area, mm
     * @param normal the direction that it faces on the whole, unit length; absent where it goes around, as a tube does
     * @param flat whether it lies in a plane, to a thousandth of its reach
     * @param low least coordinates, mm
     * @param high greatest coordinates, mm
     * @param on a point of the face itself, in the middle of its largest facet, mm
     * @param onNormal the direction that it faces there, unit length
     */
    public record Size(
            double area,
            Vector3D centre,
            Optional<Vector3D> normal,
            boolean flat,
            Vector3D low,
            Vector3D high,
            Vector3D on,
            Vector3D onNormal) {}

    /** Takes the array over. */
    MeshFace(String name, FacetMesh.Group group, int[] facets, Size size) {
        this.name = name;
        this.group = group;
        this.facets = facets;
        this.size = size;
    }

    /** Its path below the part. */
    public String name() {
        return name;
    }

    /** What the file tells of it. */
    public FacetMesh.Group group() {
        return group;
    }

    /** Its facets, by number; not copied: the caller must not change them. */
    public int[] facets() {
        return facets;
    }

    /** Where it lies and how large it is. */
    public Size size() {
        return size;
    }

    /** The same under another name. */
    MeshFace named(String other) {
        return new MeshFace(other, group, facets, size);
    }
}
