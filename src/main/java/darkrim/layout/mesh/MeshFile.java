package darkrim.layout.mesh;

import darkrim.geom.mesh.FacetMesh;
import java.io.Serializable;
import java.util.Optional;

/**
 * A mesh file that was read.
 *
 * @param name its path, for messages
 * @param sha256 SHA-256 of its bytes in lower-case hexadecimal
 * @param outside whether it lies outside the folder of the layout
 * @param mesh its facets as they stand there, in whatever unit it has
 * @param meshing how its curved surfaces were turned into facets; empty for a file that has facets
 */
public record MeshFile(String name, String sha256, boolean outside, FacetMesh mesh, Optional<Meshing> meshing)
        implements Serializable {
    /** Files of one name with the same bytes, meshed alike, are the same. */
    @Override
    public boolean equals(Object other) {
        return other instanceof MeshFile file
                && name.equals(file.name)
                && sha256.equals(file.sha256)
                && meshing.equals(file.meshing);
    }

    @Override
    public int hashCode() {
        return sha256.hashCode();
    }

    /** The content in short, for whoever prints a layout. */
    @Override
    public String toString() {
        return name + " SHA-256 " + sha256;
    }

    private Object writeReplace() {
        return new SentMeshFile(this);
    }
}
