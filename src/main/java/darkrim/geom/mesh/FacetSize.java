package darkrim.geom.mesh;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The size of a facet.
 *
 * @param longest length of its longest side, mm
 * @param side which side that is, from its first corner (0 to 2)
 * @param width distance of the corner across from it, mm
 */
record FacetSize(double longest, int side, double width) {
    static FacetSize of(FacetMesh mesh, int facet) {
        double longest = -1;
        int side = 0;
        for (int k = 0; k < 3; k++) {
            double length = mesh.at(facet, k).distance(mesh.at(facet, (k + 1) % 3));
            if (length > longest) {
                longest = length;
                side = k;
            }
        }
        Vector3D from = mesh.at(facet, side);
        Vector3D along = mesh.at(facet, (side + 1) % 3).subtract(from);
        Vector3D across = mesh.at(facet, (side + 2) % 3).subtract(from);
        double width = longest > 0 ? along.cross(across).norm() / longest : 0;
        return new FacetSize(longest, side, width);
    }
}
