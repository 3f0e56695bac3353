package darkrim.geom.mesh;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * How often some facets go around a point: the sum of the solid angles that they fill, over 4 pi. 1 inside a closed shell that faces outward,
 * 0 outside (Van Oosterom and Strackee, The Solid Angle of a Plane Triangle, IEEE Trans. Biomed. Eng. 30(2), 1983).
 */
final class WindingNumber {
    private WindingNumber() {}

    /**
     * The winding number of the facets of some shells.
     *
     * @param shellOf shell of each facet
     * @param counts of each shell, whether it counts
     */
    static double at(Vector3D point, FacetMesh mesh, int[] shellOf, boolean[] counts) {
        double sum = 0;
        for (int f = 0; f < shellOf.length; f++) {
            if (counts[shellOf[f]]) {
                Vector3D a = mesh.at(f, 0).subtract(point);
                Vector3D b = mesh.at(f, 1).subtract(point);
                Vector3D c = mesh.at(f, 2).subtract(point);
                double la = a.norm();
                double lb = b.norm();
                double lc = c.norm();
                double below = la * lb * lc + a.dot(b) * lc + b.dot(c) * la + c.dot(a) * lb;
                sum += StrictMath.atan2(a.dot(b.cross(c)), below);
            }
        }
        return sum / (2 * Math.PI);
    }
}
