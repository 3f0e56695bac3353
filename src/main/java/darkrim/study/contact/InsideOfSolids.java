package darkrim.study.contact;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Whether a point lies inside a solid body: what a ray from there meets first of its surface is met from inside. Each body gets a tree of its
 * own when it is first asked about. For points that keep clear of the surface by far more than rounding. One thread each.
 */
final class InsideOfSolids {
    /** Directions along no axis and no usual diagonal; the majority decides, should a ray run along an edge. */
    private static final double[][] WAYS = {
        {0.5318, 0.3847, 0.7541}, {-0.6173, 0.7219, 0.3128}, {0.2791, -0.8464, -0.4536}
    };

    private final Scene scene;
    private final PlacedBodies bodies;
    private final int[] firstFacet;
    private final int[] facetCount;
    private final Map<Integer, FacetTree> trees = new HashMap<>();
    private final Ray ray = new Ray();

    InsideOfSolids(Scene scene, PlacedBodies bodies) {
        this.scene = scene;
        this.bodies = bodies;
        firstFacet = new int[bodies.count()];
        facetCount = new int[bodies.count()];
        // The facets of a body stand together, in the order of its faces.
        for (int f = scene.facetCount() - 1; f >= 0; f--) {
            firstFacet[bodies.of(f)] = f;
            facetCount[bodies.of(f)]++;
        }
    }

    /** Whether a solid body holds a point. */
    boolean holds(int body, Vector3D point) {
        if (!bodies.inBox(body, point)) {
            return false;
        }
        FacetTree tree = trees.computeIfAbsent(body, this::tree);
        int votes = 0;
        for (double[] way : WAYS) {
            ray.set(
                    point.getX(),
                    point.getY(),
                    point.getZ(),
                    way[0],
                    way[1],
                    way[2],
                    Double.POSITIVE_INFINITY,
                    Ray.NO_PLANE);
            int met = tree.nearest(ray);
            if (met >= 0) {
                int f = firstFacet[body] + met;
                double out = scene.normal(f, 0) * way[0] + scene.normal(f, 1) * way[1] + scene.normal(f, 2) * way[2];
                votes += out > 0 ? 1 : 0;
            }
        }
        return votes >= 2;
    }

    private FacetTree tree(int body) {
        int count = facetCount[body];
        double[] corners = new double[9 * count];
        for (int i = 0; i < corners.length; i++) {
            corners[i] = scene.corner(firstFacet[body] + i / 9, i % 9 / 3, i % 3);
        }
        return FacetTree.build(corners, new int[count], scene.bound());
    }
}
