package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Joins the facets of a surface to larger convex polygons, two at a time across a shared side (Hertel and Mehlhorn 1983), so that a proof has
 * fewer and rounder pieces to look at.
 */
final class FaceMerge {
    private final Scene scene;
    private final Tolerance tolerance;
    private final List<Part> parts = new ArrayList<>();
    private final boolean back;
    /** How many facets of the surface lie in a plane: a polygon of all of them has nothing to be joined with. */
    private final int[] facetsIn;

    /** A polygon in the making: its plane, as seen from the side that is looked at, its corners in order, and its facets. */
    private record Part(Frame frame, int plane, List<Vector3D> loop, List<Integer> facets) {}

    /** A facet that is alone in its plane becomes a polygon when it is asked for: a curved surface has hundreds of thousands of them. */
    private static Part alone(int f, int plane) {
        return new Part(null, plane, null, List.of(f));
    }

    private Part whole(Part part) {
        return part.frame == null ? part(part.facets.get(0)) : part;
    }

    private Part part(int f) {
        Vector3D a = scene.corner(f, 0);
        Vector3D b = scene.corner(f, back ? 2 : 1);
        Vector3D c = scene.corner(f, back ? 1 : 2);
        return new Part(frame(f), scene.plane(f), List.of(a, b, c), List.of(f));
    }

    FaceMerge(Scene scene, Surface surface, Tolerance tolerance) {
        this.scene = scene;
        this.tolerance = tolerance;
        int last = surface.firstFacet() + surface.facetCount();
        back = surface.back();
        facetsIn = new int[scene.planeCount()];
        for (int f = surface.firstFacet(); f < last; f++) {
            facetsIn[scene.plane(f)]++;
        }
        for (int f = surface.firstFacet(); f < last; f++) {
            parts.add(facetsIn[scene.plane(f)] == 1 ? alone(f, scene.plane(f)) : part(f));
        }
        joinAll();
    }

    /** The polygons. */
    List<Face> pieces() {
        List<Face> pieces = new ArrayList<>();
        for (Part each : parts) {
            Part part = whole(each);
            double[] plane = new double[2 * part.loop.size()];
            for (int i = 0; i < part.loop.size(); i++) {
                plane[2 * i] = part.frame.inU(part.loop.get(i));
                plane[2 * i + 1] = part.frame.inV(part.loop.get(i));
            }
            pieces.add(new Face(FlatPiece.of(part.frame, plane), part.plane));
        }
        return pieces;
    }

    /** Calls back with the facets of each polygon and its corners, three coordinates each. */
    void forEach(BiConsumer<List<Integer>, double[]> visitor) {
        for (Part each : parts) {
            Part part = whole(each);
            double[] space = new double[3 * part.loop.size()];
            for (int i = 0; i < part.loop.size(); i++) {
                space[3 * i] = part.loop.get(i).getX();
                space[3 * i + 1] = part.loop.get(i).getY();
                space[3 * i + 2] = part.loop.get(i).getZ();
            }
            visitor.accept(part.facets, space);
        }
    }

    /** Normal of the side that is looked at; u along the side of the facet that lies most nearly along an axis. */
    private Frame frame(int f) {
        Vector3D normal = back ? scene.normal(f).negate() : scene.normal(f);
        Vector3D best = null;
        double straightest = -1;
        for (int k = 0; k < 3; k++) {
            Vector3D side = scene.corner(f, (k + 1) % 3).subtract(scene.corner(f, k));
            double straight = Math.max(Math.abs(side.getX()), Math.max(Math.abs(side.getY()), Math.abs(side.getZ())))
                    / side.norm();
            if (straight > straightest) {
                straightest = straight;
                best = side;
            }
        }
        return Frame.of(scene.corner(f, 0), best, normal.cross(best));
    }

    private void joinAll() {
        boolean joined = parts.size() > 1;
        while (joined) {
            joined = false;
            Map<List<Corner>, Integer> sides = new HashMap<>();
            boolean[] gone = new boolean[parts.size()];
            for (int i = 0; i < parts.size(); i++) {
                if (!gone[i] && !isAlone(parts.get(i))) {
                    int other = joinable(i, sides, gone);
                    if (other >= 0) {
                        gone[other] = true;
                        joined = true;
                    }
                    enter(i, sides);
                }
            }
            List<Part> left = new ArrayList<>();
            for (int i = 0; i < parts.size(); i++) {
                if (!gone[i]) {
                    left.add(parts.get(i));
                }
            }
            parts.clear();
            parts.addAll(left);
        }
    }

    private boolean isAlone(Part part) {
        return part.facets.size() == facetsIn[part.plane];
    }

    private void enter(int i, Map<List<Corner>, Integer> sides) {
        List<Vector3D> loop = parts.get(i).loop;
        for (int k = 0; k < loop.size(); k++) {
            sides.put(List.of(Corner.of(loop.get(k)), Corner.of(loop.get((k + 1) % loop.size()))), i);
        }
    }

    /** Joins polygon i with one entered before; returns the number of that one, or -1. */
    private int joinable(int i, Map<List<Corner>, Integer> sides, boolean[] gone) {
        Part part = parts.get(i);
        int n = part.loop.size();
        for (int k = 0; k < n; k++) {
            Vector3D a = part.loop.get(k);
            Vector3D b = part.loop.get((k + 1) % n);
            Integer j = sides.get(List.of(Corner.of(b), Corner.of(a)));
            if (j == null || j == i || gone[j] || parts.get(j).plane != part.plane || !sameSide(part, parts.get(j))) {
                continue;
            }
            List<Vector3D> loop = new ArrayList<>();
            for (int m = 1; m < n; m++) {
                loop.add(part.loop.get((k + m) % n));
            }
            List<Vector3D> other = parts.get(j).loop;
            int at = indexOf(other, a);
            for (int m = 0; m + 1 < other.size(); m++) {
                loop.add(other.get((at + m) % other.size()));
            }
            dropSpurs(loop);
            if (isConvex(loop, part.frame)) {
                List<Integer> facets = new ArrayList<>(part.facets);
                facets.addAll(parts.get(j).facets);
                parts.set(i, new Part(part.frame, part.plane, loop, facets));
                return j;
            }
        }
        return -1;
    }

    /** Facets that lie over each other may face opposite ways: these do not go on across a side, they fold back at it. */
    private static boolean sameSide(Part one, Part other) {
        return one.frame.normal().dot(other.frame.normal()) > 0;
    }

    /** Where two polygons share several sides in a row, a loop runs out and back along those it was not joined across: takes these out. */
    private static void dropSpurs(List<Vector3D> loop) {
        int i = 0;
        while (i < loop.size() && loop.size() > 3) {
            int n = loop.size();
            int next = (i + 1) % n;
            if (Corner.of(loop.get((i + n - 1) % n)).equals(Corner.of(loop.get(next)))) {
                loop.remove(Math.max(i, next));
                loop.remove(Math.min(i, next));
                i = 0;
            } else {
                i++;
            }
        }
    }

    private static int indexOf(List<Vector3D> loop, Vector3D corner) {
        for (int i = 0; i < loop.size(); i++) {
            if (Corner.of(loop.get(i)).equals(Corner.of(corner))) {
                return i;
            }
        }
        throw new IllegalStateException("the corner of a shared side is missing");
    }

    private boolean isConvex(List<Vector3D> loop, Frame frame) {
        int n = loop.size();
        if (n < 3) {
            return false;
        }
        for (int i = 0; i < n; i++) {
            Vector3D a = loop.get(i);
            Vector3D b = loop.get((i + 1) % n);
            Vector3D c = loop.get((i + 2) % n);
            double turn = b.subtract(a).cross(c.subtract(b)).dot(frame.normal());
            boolean turnsBack = !(turn > 0) && b.subtract(a).dot(c.subtract(b)) <= 0;
            // A facet that is a little off the plane stays by itself: a piece is taken to be flat.
            if (turn < 0 || turnsBack || Math.abs(frame.height(a)) > 0.25 * tolerance.rounding()) {
                return false;
            }
        }
        return true;
    }
}
