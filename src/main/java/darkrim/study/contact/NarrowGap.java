package darkrim.study.contact;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A gap between two bodies that is narrower than the designer wants to hear of: light may leak there. Faces that look at each other across
 * it, or, of bodies that touch nowhere, whatever comes nearest.
 *
 * @param first number of one body
 * @param second number of the other
 * @param width how wide it is where it is narrowest, mm
 * @param at a place there, mm
 */
record NarrowGap(int first, int second, double width, Vector3D at) {
    /** cos 155 deg: facets turned to each other by more look at each other. */
    private static final double OPPOSED = -0.906;

    /** What is known of two bodies. */
    private static final class Nearest {
        private boolean touch;
        private double width = Double.POSITIVE_INFINITY;
        private double opposed = Double.POSITIVE_INFINITY;
        private Vector3D at = Vector3D.ZERO;
        private Vector3D atOpposed = Vector3D.ZERO;
    }

    /**
     * The gaps between a body and all others, those of its own part left out; those found so far if it is asked to stop.
     *
     * @param body number of the body
     * @param contact what is nearer than this touches, mm
     * @param widest wider gaps are none, mm
     */
    static List<NarrowGap> of(
            Scene scene, FacetTree tree, PlacedBodies bodies, int body, double contact, double widest, Watch watch) {
        Map<Integer, Nearest> byOther = new TreeMap<>();
        for (int f = 0; f < scene.facetCount(); f++) {
            if (bodies.of(f) != body) {
                continue;
            }
            if ((f & 1023) == 0 && watch.stop()) {
                break;
            }
            int facet = f;
            double[][] box = PlacedBodies.boxOf(scene, f, widest);
            tree.touching(box[0], box[1], g -> {
                int other = bodies.of(g);
                if (other != body && !bodies.belongTogether(body, other)) {
                    look(scene, facet, g, contact, byOther.computeIfAbsent(other, key -> new Nearest()));
                }
            });
        }
        List<NarrowGap> gaps = new ArrayList<>();
        byOther.forEach((other, nearest) -> {
            if (nearest.opposed < widest) {
                gaps.add(new NarrowGap(body, other, nearest.opposed, nearest.atOpposed));
            } else if (!nearest.touch && nearest.width < widest) {
                gaps.add(new NarrowGap(body, other, nearest.width, nearest.at));
            }
        });
        return gaps;
    }

    private static void look(Scene scene, int f, int g, double contact, Nearest nearest) {
        double distance = FacetDistance.between(scene, f, g);
        if (distance <= contact) {
            nearest.touch = true;
            return;
        }
        if (distance < nearest.width) {
            nearest.width = distance;
            nearest.at = middle(scene, f);
        }
        if (distance < nearest.opposed && lookAtEachOther(scene, f, g)) {
            nearest.opposed = distance;
            nearest.atOpposed = middle(scene, f);
        }
    }

    /** Whether the fronts of two facets face each other, each before the other. */
    private static boolean lookAtEachOther(Scene scene, int f, int g) {
        Vector3D way = middle(scene, g).subtract(middle(scene, f));
        return scene.normal(f).dot(scene.normal(g)) < OPPOSED
                && scene.normal(f).dot(way) > 0
                && scene.normal(g).dot(way) < 0;
    }

    private static Vector3D middle(Scene scene, int f) {
        return Vector3D.centroid(scene.corner(f, 0), scene.corner(f, 1), scene.corner(f, 2));
    }
}
