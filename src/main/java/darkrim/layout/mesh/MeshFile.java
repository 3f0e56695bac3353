package darkrim.layout.mesh;

import darkrim.geom.mesh.FacetMesh;
import java.io.Serializable;

/**
 * A mesh file that was read.
 *
 * @param name its path, for messages
 * @param sha256 SHA-256 of its bytes in lower-case hexadecimal
 * @param outside whether it lies outside the folder of the layout
 * @param mesh its facets as they stand there, in whatever unit it has
 */
public record MeshFile(String name, String sha256, boolean outside, FacetMesh mesh) implements Serializable {
    private Object writeReplace() {
        return new SentMeshFile(this);
    }
}
