package darkrim.study.contact;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Finds bodies of different parts that run into one another, deeper than a tolerance.
 *
 * <p>The insides of two closed solids meet if and only if a facet of one crosses a facet of the other where the corner between their backs is
 * inside both, or a facet of one lies inside the other (or on its surface, its back inside). So of each crossing one point in that corner is
 * looked at, and of each facet points just behind it. Every hit is checked to lie inside both bodies: bodies that touch, flush or with an
 * edge on a face, give none. Sheets have no inside: a point of the sheet must lie inside the solid, and two sheets must pierce each other.
 *
 * <p>Pairs of bodies are found by a sweep along x, facets by the tree. One use, one thread.
 */
final class OverlapSearch {
    /** After so many facets of a pair have shown the overlap, the rest would add little to its size. */
    private static final int ENOUGH = 200;
    /** A corner of a facet is looked at a little inside the facet, by this share of the way to its middle. */
    private static final double DRAWN_IN = 1e-3;
    /** Facets whose backs face each other at less than this leave no corner between them to look at. */
    private static final double LEAST_CORNER = 1e-3;

    private final Scene scene;
    private final FacetTree tree;
    private final PlacedBodies bodies;
    private final InsideOfSolids inside;
    private final double tolerance;
    private final Watch watch;

    /** What the pair at hand has shown. */
    private Overlap found;

    private int shown;

    /**
     * @param tolerance overlaps less deep than about twice this are taken for contact, mm
     * @param watch may ask to stop
     */
    OverlapSearch(Scene scene, FacetTree tree, PlacedBodies bodies, double tolerance, Watch watch) {
        this.watch = watch;
        this.scene = scene;
        this.tree = tree;
        this.bodies = bodies;
        this.tolerance = tolerance;
        inside = new InsideOfSolids(scene, bodies);
    }

    /** All overlaps, in the order of the bodies; those found so far if it is asked to stop. */
    List<Overlap> all() {
        int[] order = IntStream.range(0, bodies.count())
                .boxed()
                .sorted(Comparator.comparingDouble(b -> bodies.bound(b, 0)))
                .mapToInt(b -> b)
                .toArray();
        List<Overlap> overlaps = new ArrayList<>();
        for (int i = 0; i < order.length && !watch.stop(); i++) {
            for (int j = i + 1; j < order.length && bodies.bound(order[j], 0) < bodies.bound(order[i], 3); j++) {
                int first = Math.min(order[i], order[j]);
                int second = Math.max(order[i], order[j]);
                if (!bodies.belongTogether(first, second) && overlap(first, second)) {
                    overlaps.add(found);
                }
            }
        }
        overlaps.sort(Comparator.comparingInt(Overlap::first).thenComparingInt(Overlap::second));
        return overlaps;
    }

    private boolean overlap(int one, int other) {
        found = null;
        shown = 0;
        // A sheet has no depth along its normal: its box is not drawn in.
        boolean solids = bodies.body(one).solid() && bodies.body(other).solid();
        if (bodies.sharedBox(one, other, solids ? tolerance : -tolerance) == null) {
            return false;
        }
        double[] shared = bodies.sharedBox(one, other, -tolerance);
        List<Integer> ofOne = facetsIn(shared, one);
        List<Integer> ofOther = facetsIn(shared, other);
        if (ofOne.size() <= ofOther.size()) {
            cross(ofOne, one, other);
        } else {
            cross(ofOther, other, one);
        }
        lieWithin(ofOne, one, other);
        lieWithin(ofOther, other, one);
        return found != null;
    }

    private List<Integer> facetsIn(double[] box, int body) {
        List<Integer> facets = new ArrayList<>();
        double[] low = {box[0], box[1], box[2]};
        double[] high = {box[3], box[4], box[5]};
        tree.touching(low, high, f -> {
            if (bodies.of(f) == body) {
                facets.add(f);
            }
        });
        facets.sort(Comparator.naturalOrder());
        return facets;
    }

    private void cross(List<Integer> facets, int one, int other) {
        for (int f : facets) {
            if (watch.stop()) {
                return;
            }
            double[][] box = PlacedBodies.boxOf(scene, f, tolerance);
            tree.touching(box[0], box[1], g -> {
                if (bodies.of(g) == other && shown < ENOUGH) {
                    FacetCrossing crossing = FacetCrossing.of(scene, f, g, tolerance);
                    if (crossing != null && isInBoth(crossing, f, g, one, other)) {
                        add(one, other, crossing.middle());
                        add(one, other, crossing.from());
                        add(one, other, crossing.to());
                        shown++;
                    }
                }
            });
        }
    }

    private boolean isInBoth(FacetCrossing crossing, int f, int g, int one, int other) {
        boolean firstSolid = bodies.body(one).solid();
        boolean secondSolid = bodies.body(other).solid();
        if (firstSolid && secondSolid) {
            Vector3D back = scene.normal(f).add(scene.normal(g));
            double corner = 1 + scene.normal(f).dot(scene.normal(g));
            if (corner < LEAST_CORNER) {
                return false;
            }
            Vector3D point = crossing.middle().subtract(back.multiply(2 * tolerance / corner));
            return inside.holds(one, point) && inside.holds(other, point);
        }
        if (!firstSolid && !secondSolid) {
            return crossing.through();
        }
        int sheet = firstSolid ? g : f;
        int wall = firstSolid ? f : g;
        Vector3D into = scene.normal(wall).reject(scene.normal(sheet)).negate();
        Vector3D point = crossing.middle().add(into.multiply(4 * tolerance / into.normSq()));
        return isOn(sheet, point) && isSheetInside(sheet, point, firstSolid ? one : other);
    }

    /** Whether a point of a sheet lies inside a solid, and what is on both sides of the sheet as well: a sheet on a face does not. */
    private boolean isSheetInside(int sheet, Vector3D point, int solid) {
        Vector3D aside = scene.normal(sheet).multiply(2 * tolerance);
        return inside.holds(solid, point.add(aside)) && inside.holds(solid, point.subtract(aside));
    }

    private boolean isOn(int facet, Vector3D point) {
        for (int k = 0; k < 3; k++) {
            Vector3D corner = scene.corner(facet, k);
            Vector3D side = scene.corner(facet, (k + 1) % 3).subtract(corner);
            if (side.cross(point.subtract(corner)).dot(scene.normal(facet)) < 0) {
                return false;
            }
        }
        return true;
    }

    /** Looks for facets of one body that lie inside the other, or on its surface with their backs inside. */
    private void lieWithin(List<Integer> facets, int one, int other) {
        if (!bodies.body(other).solid()) {
            return;
        }
        for (int f : facets) {
            if (shown >= ENOUGH || watch.stop()) {
                return;
            }
            Vector3D a = scene.corner(f, 0);
            Vector3D b = scene.corner(f, 1);
            Vector3D c = scene.corner(f, 2);
            Vector3D middle = a.add(b).add(c).multiply(1 / 3.0);
            if (isWithin(f, middle, one, other)) {
                shown++;
                add(one, other, middle);
                for (Vector3D corner : List.of(a, b, c)) {
                    Vector3D near = corner.lerp(middle, DRAWN_IN);
                    if (isWithin(f, near, one, other)) {
                        add(one, other, near);
                    }
                }
            }
        }
    }

    private boolean isWithin(int f, Vector3D point, int one, int other) {
        if (!bodies.inBox(other, point)) {
            return false;
        }
        if (!bodies.body(one).solid()) {
            return isSheetInside(f, point, other);
        }
        Vector3D behind = point.subtract(scene.normal(f).multiply(2 * tolerance));
        return inside.holds(other, behind) && inside.holds(one, behind);
    }

    private void add(int one, int other, Vector3D place) {
        found = found == null ? Overlap.at(Math.min(one, other), Math.max(one, other), place) : found.and(place);
    }
}
