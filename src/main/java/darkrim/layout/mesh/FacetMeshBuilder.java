package darkrim.layout.mesh;

import darkrim.geom.mesh.FacetMesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/** Gathers facets as a file lists them. Points with the same coordinates, bit for bit, become one. For use by one thread. */
final class FacetMeshBuilder {
    private double[] points = new double[3 * 1024];
    private int pointCount;
    private int[] corners = new int[3 * 1024];
    private int[] groupOf = new int[1024];
    private int facetCount;
    private final Map<FacetMesh.Group, Integer> groups = new LinkedHashMap<>();
    private FacetMesh.Group group = FacetMesh.Group.NAMELESS;
    /** Open addressing: number of the point plus 1, or 0 where free. */
    private int[] slots = new int[4096];

    /**
     * The number of a point, new or known.
     *
     * @param x finite coordinate, in whatever unit the file has
     * @param y likewise
     * @param z likewise
     */
    int point(double x, double y, double z) {
        // Adding 0 turns -0 into 0.
        double px = x + 0.0;
        double py = y + 0.0;
        double pz = z + 0.0;
        int slot = slotOf(px, py, pz);
        if (slots[slot] != 0) {
            return slots[slot] - 1;
        }
        if (3 * pointCount == points.length) {
            points = Arrays.copyOf(points, 2 * points.length);
        }
        points[3 * pointCount] = px;
        points[3 * pointCount + 1] = py;
        points[3 * pointCount + 2] = pz;
        slots[slot] = ++pointCount;
        if (2 * pointCount > slots.length) {
            widen();
        }
        return pointCount - 1;
    }

    /** The facets that follow belong to this group. */
    void group(FacetMesh.Group next) {
        group = next;
    }

    /** Adds a facet by the numbers of its points, counter-clockwise as seen from outside. */
    void facet(int a, int b, int c) {
        if (facetCount == groupOf.length) {
            groupOf = Arrays.copyOf(groupOf, 2 * facetCount);
            corners = Arrays.copyOf(corners, 6 * facetCount);
        }
        corners[3 * facetCount] = a;
        corners[3 * facetCount + 1] = b;
        corners[3 * facetCount + 2] = c;
        groupOf[facetCount++] = groups.computeIfAbsent(group, key -> groups.size());
    }

    /** Number of facets so far. */
    int facetCount() {
        return facetCount;
    }

    /** The mesh; the builder must not be used after it. */
    FacetMesh build() {
        slots = new int[0];
        return FacetMesh.of(
                Arrays.copyOf(points, 3 * pointCount),
                Arrays.copyOf(corners, 3 * facetCount),
                Arrays.copyOf(groupOf, facetCount),
                new ArrayList<>(groups.keySet()));
    }

    private int slotOf(double x, double y, double z) {
        int slot = hash(x, y, z) & slots.length - 1;
        while (slots[slot] != 0) {
            int at = 3 * (slots[slot] - 1);
            if (points[at] == x && points[at + 1] == y && points[at + 2] == z) {
                return slot;
            }
            slot = slot + 1 & slots.length - 1;
        }
        return slot;
    }

    private void widen() {
        slots = new int[2 * slots.length];
        for (int p = 0; p < pointCount; p++) {
            slots[slotOf(points[3 * p], points[3 * p + 1], points[3 * p + 2])] = p + 1;
        }
    }

    private static int hash(double x, double y, double z) {
        long bits = Double.doubleToLongBits(x) * 0x9E3779B97F4A7C15L;
        bits = (bits ^ bits >>> 29) + Double.doubleToLongBits(y) * 0xBF58476D1CE4E5B9L;
        bits = (bits ^ bits >>> 31) + Double.doubleToLongBits(z) * 0x94D049BB133111EBL;
        return (int) (bits ^ bits >>> 32);
    }
}
