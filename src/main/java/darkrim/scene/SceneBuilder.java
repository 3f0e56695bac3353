package darkrim.scene;

import darkrim.diagnostic.Place;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Gathers surfaces and their facets, then makes the scene. For use by one thread. */
public final class SceneBuilder {
    private final Map<String, Entry> entries = new LinkedHashMap<>();

    private final Map<String, CellGrid> grids = new HashMap<>();

    private record Entry(
            Finish finish, Optional<String> backName, Finish backFinish, Place place, List<Vector3D> corners) {}

    /** Names a face of a solid; asking again for the same name adds nothing. */
    public SceneBuilder solid(String name, Finish finish, Place place) {
        entries.computeIfAbsent(name, n -> new Entry(finish, Optional.empty(), finish, place, new ArrayList<>()));
        return this;
    }

    /** Names the two sides of a sheet; the facets added to {@code frontName} belong to both. */
    public SceneBuilder sheet(String frontName, Finish frontFinish, String backName, Finish backFinish, Place place) {
        entries.computeIfAbsent(
                frontName, n -> new Entry(frontFinish, Optional.of(backName), backFinish, place, new ArrayList<>()));
        return this;
    }

    /**
     * Adds a triangle to a surface named before. Corners counter-clockwise as seen from outside.
     *
     * @throws IllegalArgumentException if the surface is unknown, a corner is not finite, or the triangle has no area
     */
    public SceneBuilder triangle(String name, Vector3D a, Vector3D b, Vector3D c) {
        if (!(a.isFinite() && b.isFinite() && c.isFinite())) {
            throw new IllegalArgumentException("surface " + name + " has a corner that is not finite");
        }
        if (!hasArea(a, b, c)) {
            throw new IllegalArgumentException("surface " + name + " has a triangle without area at " + a + " mm");
        }
        List<Vector3D> corners = entry(name).corners;
        corners.add(a);
        corners.add(b);
        corners.add(c);
        return this;
    }

    /** Adds a flat convex quadrilateral as two triangles; corners counter-clockwise as seen from outside. */
    public SceneBuilder quad(String name, Vector3D a, Vector3D b, Vector3D c, Vector3D d) {
        return triangle(name, a, b, c).triangle(name, a, c, d);
    }

    /**
     * Gives a rectangular surface cells for a map.
     *
     * @throws IllegalArgumentException if the surface is unknown
     */
    public SceneBuilder grid(String name, CellGrid grid) {
        entry(name);
        grids.put(name, grid);
        return this;
    }

    /**
     * Makes the scene. Surfaces keep the order in which they were named; the back of a sheet follows its front.
     *
     * @throws IllegalArgumentException if two surfaces share a name
     */
    public Scene build(Beam beam) {
        int facets =
                entries.values().stream().mapToInt(e -> e.corners.size() / 3).sum();
        double[] corners = new double[9 * facets];
        int[] front = new int[facets];
        int[] back = new int[facets];
        requireOwnNames();
        List<Surface> surfaces = new ArrayList<>();
        int next = 0;
        for (Map.Entry<String, Entry> named : entries.entrySet()) {
            Entry entry = named.getValue();
            int first = next;
            int count = entry.corners.size() / 3;
            for (int i = 0; i < entry.corners.size(); i++) {
                Vector3D corner = entry.corners.get(i);
                int at = 9 * first + 3 * i;
                corners[at] = corner.getX();
                corners[at + 1] = corner.getY();
                corners[at + 2] = corner.getZ();
            }
            next += count;
            double area = areaOf(entry.corners);
            Optional<CellGrid> grid = Optional.ofNullable(grids.get(named.getKey()));
            int frontIndex = surfaces.size();
            surfaces.add(new Surface(
                    frontIndex, named.getKey(), entry.finish, first, count, false, area, grid, entry.place));
            int backIndex = Scene.INSIDE;
            if (entry.backName.isPresent()) {
                backIndex = surfaces.size();
                String backName = entry.backName.get();
                surfaces.add(new Surface(
                        backIndex, backName, entry.backFinish, first, count, true, area, grid, entry.place));
            }
            for (int f = first; f < next; f++) {
                front[f] = frontIndex;
                back[f] = backIndex;
            }
        }
        return new Scene(corners, front, back, surfaces, beam);
    }

    private void requireOwnNames() {
        Set<String> names = new HashSet<>(entries.keySet());
        for (Entry entry : entries.values()) {
            entry.backName.ifPresent(name -> {
                if (!names.add(name)) {
                    throw new IllegalArgumentException("two surfaces are named " + name);
                }
            });
        }
    }

    private static boolean hasArea(Vector3D a, Vector3D b, Vector3D c) {
        double[] nine = {a.getX(), a.getY(), a.getZ(), b.getX(), b.getY(), b.getZ(), c.getX(), c.getY(), c.getZ()};
        double[] normal = FacetPlanes.doubleAreaNormal(nine, 0);
        double squared = normal[0] * normal[0] + normal[1] * normal[1] + normal[2] * normal[2];
        return squared > 0 && squared < Double.POSITIVE_INFINITY;
    }

    private Entry entry(String name) {
        Entry entry = entries.get(name);
        if (entry == null) {
            throw new IllegalArgumentException("no surface is named " + name);
        }
        return entry;
    }

    private static double areaOf(List<Vector3D> corners) {
        double sum = 0;
        for (int i = 0; i < corners.size(); i += 3) {
            Vector3D a = corners.get(i + 1).subtract(corners.get(i));
            Vector3D b = corners.get(i + 2).subtract(corners.get(i));
            sum += a.cross(b).norm() / 2;
        }
        return sum;
    }
}
