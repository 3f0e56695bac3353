package darkrim.layout.mesh;

import darkrim.geom.mesh.FacetMesh;
import java.io.InputStream;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.io.euclidean.threed.stl.BinaryStlFacetDefinition;
import org.apache.commons.geometry.io.euclidean.threed.stl.BinaryStlFacetDefinitionReader;

/**
 * A binary STL file: 80 bytes of title, the number of facets in four bytes, then 50 bytes a facet. The normals in it are not used: they follow
 * from the order of the corners.
 */
final class BinaryStl {
    /** Bytes before the first facet. */
    static final int HEADER = 84;
    /** Bytes of a facet. */
    static final int FACET = 50;

    private BinaryStl() {}

    /** How many bytes a file has whose header states this number of facets. */
    static long bytes(long facets) {
        return HEADER + FACET * facets;
    }

    /**
     * Reads the facets.
     *
     * @param stream the file from its first byte; its length is known to fit the number in its header
     */
    static FacetMesh read(InputStream stream) throws MeshFault {
        FacetMeshBuilder mesh = new FacetMeshBuilder();
        BinaryStlFacetDefinitionReader reader = new BinaryStlFacetDefinitionReader(stream);
        for (BinaryStlFacetDefinition facet = reader.readFacet(); facet != null; facet = reader.readFacet()) {
            List<Vector3D> corners = facet.getVertices();
            int[] points = new int[3];
            for (int k = 0; k < 3; k++) {
                Vector3D corner = corners.get(k);
                if (!corner.isFinite()) {
                    throw new MeshFault(
                            "mesh-value",
                            "byte " + bytes(mesh.facetCount()) + ": facet " + (mesh.facetCount() + 1)
                                    + " has a corner that is not finite, expected numbers");
                }
                points[k] = mesh.point(decimal(corner.getX()), decimal(corner.getY()), decimal(corner.getZ()));
            }
            mesh.facet(points[0], points[1], points[2]);
        }
        return mesh.build();
    }

    /**
     * The decimal with the fewest places, at most 12, that the file's float stands for; the float itself where none does. Drawings have short
     * numbers: 60.1 becomes the float 60.0999985, and would leave a gap of 1.5e-6 mm to a part that ends at 60.1. Both lie within half the
     * step of the float, so that nothing is lost. A whole number below 2^53 over a power of ten below 10^22 is the double nearest to that
     * decimal.
     *
     * @param written a float, as a double
     */
    static double decimal(double written) {
        double scale = 1;
        for (int places = 0; places <= 12; places++) {
            double whole = Math.rint(written * scale);
            if (Math.abs(whole) < 0x1p53 && (float) (whole / scale) == (float) written) {
                return whole / scale;
            }
            scale *= 10;
        }
        return written;
    }
}
