package darkrim.scene;

import java.util.HashMap;
import java.util.Map;

/**
 * Normals, areas and plane numbers of facets.
 *
 * <p>Two facets share a plane when their unit normals agree to 1e-9 up to sign and their distances from the origin to 1e-9 of the size of
 * the scene.
 */
final class FacetPlanes {
    private static final double FINENESS = 1e-9;

    private final double[] normals;
    private final double[] areas;
    private final int[] planeOf;
    private final int count;

    private FacetPlanes(double[] normals, double[] areas, int[] planeOf, int count) {
        this.normals = normals;
        this.areas = areas;
        this.planeOf = planeOf;
        this.count = count;
    }

    /** Three components a facet, unit length; not copied. */
    double[] normals() {
        return normals;
    }

    /** One a facet, mm2; not copied. */
    double[] areas() {
        return areas;
    }

    /** One plane number a facet; not copied. */
    int[] planeOf() {
        return planeOf;
    }

    /** Number of planes. */
    int count() {
        return count;
    }

    private record Key(long nx, long ny, long nz, long offset) {}

    static FacetPlanes of(double[] corners, double bound) {
        int facets = corners.length / 9;
        double[] normals = new double[3 * facets];
        double[] areas = new double[facets];
        int[] planeOf = new int[facets];
        Map<Key, Integer> known = new HashMap<>();
        int count = 0;
        for (int f = 0; f < facets; f++) {
            double[] normal = normal(corners, 9 * f);
            double length = Math.sqrt(normal[0] * normal[0] + normal[1] * normal[1] + normal[2] * normal[2]);
            if (!(length > 0)) {
                throw new IllegalArgumentException("facet " + f + " has no area");
            }
            areas[f] = length / 2;
            for (int k = 0; k < 3; k++) {
                normals[3 * f + k] = normal[k] / length;
            }
            Integer plane = find(known, normals, 3 * f, corners, 9 * f, bound);
            if (plane == null) {
                plane = count++;
                known.put(key(normals, 3 * f, corners, 9 * f, bound, 0), plane);
            }
            planeOf[f] = plane;
        }
        return new FacetPlanes(normals, areas, planeOf, count);
    }

    /** Looks in the bin and, since a value may fall on either side of a bin's border, in the bins next to it. */
    private static Integer find(
            Map<Key, Integer> known, double[] normals, int n, double[] corners, int c, double bound) {
        for (int shift = 0; shift < 81; shift++) {
            Integer plane = known.get(key(normals, n, corners, c, bound, shift));
            if (plane != null) {
                return plane;
            }
        }
        return null;
    }

    /** The bin of a plane, moved by one of 81 shifts; shift 0 is the bin itself. */
    private static Key key(double[] normals, int n, double[] corners, int c, double bound, int shift) {
        double nx = normals[n];
        double ny = normals[n + 1];
        double nz = normals[n + 2];
        double largest = Math.abs(nx) >= Math.abs(ny) ? nx : ny;
        largest = Math.abs(largest) >= Math.abs(nz) ? largest : nz;
        double sign = largest < 0 ? -1 : 1;
        double offset = sign * (nx * corners[c] + ny * corners[c + 1] + nz * corners[c + 2]) / bound;
        return new Key(
                bin(sign * nx) + SHIFTS[shift % 3],
                bin(sign * ny) + SHIFTS[shift / 3 % 3],
                bin(sign * nz) + SHIFTS[shift / 9 % 3],
                bin(offset) + SHIFTS[shift / 27]);
    }

    private static final int[] SHIFTS = {0, 1, -1};

    private static long bin(double value) {
        return Math.round(value / FINENESS);
    }

    /** The cross product of two sides, from the corner opposite the longest side: the least cancellation. */
    private static double[] normal(double[] p, int at) {
        int apex = 0;
        double longest = -1;
        for (int k = 0; k < 3; k++) {
            int a = at + 3 * ((k + 1) % 3);
            int b = at + 3 * ((k + 2) % 3);
            double dx = p[a] - p[b];
            double dy = p[a + 1] - p[b + 1];
            double dz = p[a + 2] - p[b + 2];
            double squared = dx * dx + dy * dy + dz * dz;
            if (squared > longest) {
                longest = squared;
                apex = k;
            }
        }
        int o = at + 3 * apex;
        int a = at + 3 * ((apex + 1) % 3);
        int b = at + 3 * ((apex + 2) % 3);
        double ax = p[a] - p[o];
        double ay = p[a + 1] - p[o + 1];
        double az = p[a + 2] - p[o + 2];
        double bx = p[b] - p[o];
        double by = p[b + 1] - p[o + 1];
        double bz = p[b + 2] - p[o + 2];
        return new double[] {ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx};
    }
}
