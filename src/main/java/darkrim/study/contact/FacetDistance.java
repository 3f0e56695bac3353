package darkrim.study.contact;

import darkrim.geom.mesh.PointToTriangle;
import darkrim.scene.Scene;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** How far two facets are from each other that do not cross: between a corner and a facet, or between two sides. */
final class FacetDistance {
    private FacetDistance() {}

    /** The distance, mm. */
    static double between(Scene scene, int f, int g) {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
            least = Math.min(least, toFacet(scene, scene.corner(f, k), g));
            least = Math.min(least, toFacet(scene, scene.corner(g, k), f));
            for (int m = 0; m < 3; m++) {
                least = Math.min(
                        least,
                        sides(
                                scene.corner(f, k),
                                scene.corner(f, (k + 1) % 3),
                                scene.corner(g, m),
                                scene.corner(g, (m + 1) % 3)));
            }
        }
        return least;
    }

    private static double toFacet(Scene scene, Vector3D point, int facet) {
        return PointToTriangle.distance(point, scene.corner(facet, 0), scene.corner(facet, 1), scene.corner(facet, 2));
    }

    /** Between the lines of two sides where the common normal meets both within; ends are covered by the corners. */
    private static double sides(Vector3D a, Vector3D b, Vector3D c, Vector3D d) {
        Vector3D u = b.subtract(a);
        Vector3D v = d.subtract(c);
        Vector3D across = u.cross(v);
        double squared = across.normSq();
        if (!(squared > 1e-20 * u.normSq() * v.normSq())) {
            return Double.POSITIVE_INFINITY;
        }
        Vector3D from = c.subtract(a);
        double onFirst = from.cross(v).dot(across) / squared;
        double onSecond = from.cross(u).dot(across) / squared;
        boolean within = onFirst >= 0 && onFirst <= 1 && onSecond >= 0 && onSecond <= 1;
        return within ? Math.abs(from.dot(across)) / Math.sqrt(squared) : Double.POSITIVE_INFINITY;
    }
}
