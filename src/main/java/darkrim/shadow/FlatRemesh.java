package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.geom.Triangulation;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Cuts a flat face with holes into triangles anew after some of its corners have moved in its plane. */
final class FlatRemesh {
    private FlatRemesh() {}

    /**
     * Replaces the triangles of a surface by as many others with the same border.
     *
     * @param surface the surface
     * @param scene the scene, corners not moved
     * @param corners nine coordinates a facet, moved; the surface's are changed
     * @return false if the face is not flat, or its border runs into itself
     */
    static boolean replace(Surface surface, Scene scene, double[] corners) {
        int first = surface.firstFacet();
        int count = surface.facetCount();
        for (int f = first; f < first + count; f++) {
            if (scene.plane(f) != scene.plane(first) || !(scene.normal(f).dot(scene.normal(first)) > 0)) {
                return false;
            }
        }
        Frame frame = Frame.about(scene.corner(first, 0), scene.normal(first));
        List<List<Vector3D>> loops = loops(first, count, corners);
        List<List<Vector2D>> flat = new ArrayList<>();
        int outer = 0;
        for (List<Vector3D> loop : loops) {
            flat.add(loop.stream()
                    .map(corner -> Vector2D.of(frame.inU(corner), frame.inV(corner)))
                    .toList());
            outer = Math.abs(area(flat.get(flat.size() - 1))) > Math.abs(area(flat.get(outer)))
                    ? flat.size() - 1
                    : outer;
        }
        List<Vector3D> all = new ArrayList<>(loops.remove(outer));
        List<Vector2D> border = flat.remove(outer);
        loops.forEach(all::addAll);
        if (!(area(border) > 0)) {
            return false;
        }
        List<int[]> triangles;
        try {
            triangles = Triangulation.of(border, flat);
        } catch (IllegalArgumentException meets) {
            return false;
        }
        if (triangles.size() != count) {
            return false;
        }
        int at = 9 * first;
        for (int[] triangle : triangles) {
            for (int corner : triangle) {
                for (double coordinate : all.get(corner).toArray()) {
                    corners[at++] = coordinate;
                }
            }
        }
        return true;
    }

    /** The border of a run of facets as loops of corners, in the sense of the facets: the edges that only one of them has. */
    private static List<List<Vector3D>> loops(int first, int count, double[] corners) {
        Map<Vector3D, Set<Vector3D>> edges = new LinkedHashMap<>();
        for (int f = first; f < first + count; f++) {
            for (int k = 0; k < 3; k++) {
                Vector3D a = corner(corners, f, k);
                Vector3D b = corner(corners, f, (k + 1) % 3);
                edges.computeIfAbsent(a, from -> new LinkedHashSet<>()).add(b);
            }
        }
        Map<Vector3D, Vector3D> next = new LinkedHashMap<>();
        edges.forEach((a, ends) -> ends.forEach(b -> {
            if (!edges.getOrDefault(b, Set.of()).contains(a)) {
                next.put(a, b);
            }
        }));
        List<List<Vector3D>> loops = new ArrayList<>();
        Map<Vector3D, Vector3D> left = new HashMap<>(next);
        for (Vector3D start : next.keySet()) {
            List<Vector3D> loop = new ArrayList<>();
            Vector3D here = start;
            while (left.containsKey(here)) {
                loop.add(here);
                here = left.remove(here);
            }
            if (loop.size() > 2) {
                loops.add(loop);
            }
        }
        return loops;
    }

    private static Vector3D corner(double[] corners, int f, int k) {
        int at = 9 * f + 3 * k;
        // Adding 0 turns -0 into 0.
        return Vector3D.of(corners[at] + 0.0, corners[at + 1] + 0.0, corners[at + 2] + 0.0);
    }

    private static double area(List<Vector2D> loop) {
        double sum = 0;
        for (int i = 0; i < loop.size(); i++) {
            Vector2D a = loop.get(i);
            Vector2D b = loop.get((i + 1) % loop.size());
            sum += a.getX() * b.getY() - a.getY() * b.getX();
        }
        return sum / 2;
    }
}
