package darkrim.study.contact;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A sheet that lies on a face of another body, or on another sheet, so near that light is not told to be on this or that side of it: it would
 * not cover the face.
 *
 * @param sheet number of the body that is a sheet
 * @param other number of the other body
 * @param facet a facet of the other body that the sheet lies on
 * @param at a place where the one lies on the other, mm
 */
record SheetContact(int sheet, int other, int facet, Vector3D at) {
    /** Facets turned against each other by more than this, rad, meet in a line, not in an area. */
    private static final double LARGEST_SINE = 1e-3;

    /**
     * All such contacts, each pair of bodies once; those found so far if it is asked to stop. Facets that lie side by side in one plane, and
     * sheets that stand on a face, are none.
     *
     * @param gap sheets nearer than this to a face lie on it, and areas narrower than this count for nothing, mm
     */
    static List<SheetContact> all(Scene scene, FacetTree tree, PlacedBodies bodies, double gap, Watch watch) {
        List<SheetContact> contacts = new ArrayList<>();
        Set<Long> pairs = new HashSet<>();
        for (int f = 0; f < scene.facetCount(); f++) {
            int sheet = bodies.of(f);
            if (bodies.body(sheet).solid()) {
                continue;
            }
            if (watch.stop()) {
                break;
            }
            int facet = f;
            double[][] box = PlacedBodies.boxOf(scene, f, gap);
            tree.touching(box[0], box[1], g -> {
                int other = bodies.of(g);
                // Of two sheets the later one is named.
                boolean asked = other < sheet || bodies.body(other).solid();
                long pair = (long) sheet << 32 | other;
                if (other != sheet && asked && !pairs.contains(pair)) {
                    contact(scene, facet, g, gap).ifPresent(at -> {
                        pairs.add(pair);
                        contacts.add(new SheetContact(sheet, other, g, at));
                    });
                }
            });
        }
        return contacts;
    }

    /** The middle of the area in which one facet lies on another, if there is one. */
    private static Optional<Vector3D> contact(Scene scene, int f, int g, double gap) {
        if (scene.normal(f).cross(scene.normal(g)).norm() > LARGEST_SINE
                || !overlapAlongSides(scene, f, g, gap)
                || !overlapAlongSides(scene, g, f, gap)) {
            return Optional.empty();
        }
        List<Vector3D> over = over(scene, f, g);
        Vector3D normal = scene.normal(g);
        boolean near = over.stream().allMatch(point -> Math.abs(normal.dot(point.subtract(scene.corner(g, 0)))) <= gap);
        return over.isEmpty() || !near ? Optional.empty() : Optional.of(Vector3D.centroid(over));
    }

    /** Separating axes of convex polygons, here the sides of one of the two: shared width across each must be more than the gap. */
    private static boolean overlapAlongSides(Scene scene, int f, int g, double gap) {
        for (int k = 0; k < 3; k++) {
            Vector3D corner = scene.corner(f, k);
            Vector3D inward = scene.normal(f)
                    .cross(scene.corner(f, (k + 1) % 3).subtract(corner))
                    .normalize();
            double most = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < 3; i++) {
                most = Math.max(most, inward.dot(scene.corner(g, i).subtract(corner)));
            }
            if (!(most > gap)) {
                return false;
            }
        }
        return true;
    }

    /** The part of facet f that lies over facet g. */
    private static List<Vector3D> over(Scene scene, int f, int g) {
        List<Vector3D> over = List.of(scene.corner(f, 0), scene.corner(f, 1), scene.corner(f, 2));
        for (int k = 0; k < 3; k++) {
            Vector3D corner = scene.corner(g, k);
            over = clip(
                    over,
                    corner,
                    scene.normal(g).cross(scene.corner(g, (k + 1) % 3).subtract(corner)));
        }
        return over;
    }

    /** The part of a convex polygon on the inner side of a plane (Sutherland and Hodgman 1974). */
    private static List<Vector3D> clip(List<Vector3D> polygon, Vector3D corner, Vector3D inward) {
        List<Vector3D> left = new ArrayList<>();
        for (int i = 0; i < polygon.size(); i++) {
            Vector3D a = polygon.get(i);
            Vector3D b = polygon.get((i + 1) % polygon.size());
            double from = inward.dot(a.subtract(corner));
            double to = inward.dot(b.subtract(corner));
            if (from >= 0) {
                left.add(a);
            }
            if ((from < 0 && to > 0) || (from > 0 && to < 0)) {
                left.add(a.lerp(b, from / (from - to)));
            }
        }
        return left;
    }
}
