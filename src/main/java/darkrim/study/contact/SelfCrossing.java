package darkrim.study.contact;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Facets of one body that run through each other, which only a body from a file can have.
 *
 * @param count pairs of facets that cross, those that share a corner left out; no more than {@link #MOST} are counted
 * @param at the middle of the longest crossing, mm
 * @param length its length, mm
 */
record SelfCrossing(int count, Vector3D at, double length) {
    /** More are not counted. */
    static final int MOST = 1000;

    private static final SelfCrossing NONE = new SelfCrossing(0, Vector3D.ZERO, 0);

    /**
     * The crossings of a body; those found so far if it is asked to stop.
     *
     * @param body number of the body
     * @param tolerance facets that reach through each other by less only touch, mm
     */
    static SelfCrossing of(Scene scene, FacetTree tree, PlacedBodies bodies, int body, double tolerance, Watch watch) {
        SelfCrossing[] found = {NONE};
        for (int f = 0; f < scene.facetCount() && found[0].count < MOST; f++) {
            if (bodies.of(f) != body) {
                continue;
            }
            if ((f & 1023) == 0 && watch.stop()) {
                break;
            }
            int facet = f;
            double[][] box = PlacedBodies.boxOf(scene, f, 0);
            tree.touching(box[0], box[1], g -> {
                if (g > facet && bodies.of(g) == body && !shareCorner(scene, facet, g)) {
                    FacetCrossing crossing = FacetCrossing.of(scene, facet, g, tolerance);
                    if (crossing != null && crossing.through()) {
                        found[0] = found[0].and(crossing);
                    }
                }
            });
        }
        return found[0];
    }

    private SelfCrossing and(FacetCrossing crossing) {
        double other = crossing.from().distance(crossing.to());
        return other > length
                ? new SelfCrossing(count + 1, crossing.middle(), other)
                : new SelfCrossing(count + 1, at, length);
    }

    private static boolean shareCorner(Scene scene, int f, int g) {
        for (int i = 0; i < 9; i++) {
            int a = i / 3;
            int b = i % 3;
            if (scene.corner(f, a, 0) == scene.corner(g, b, 0)
                    && scene.corner(f, a, 1) == scene.corner(g, b, 1)
                    && scene.corner(f, a, 2) == scene.corner(g, b, 2)) {
                return true;
            }
        }
        return false;
    }
}
