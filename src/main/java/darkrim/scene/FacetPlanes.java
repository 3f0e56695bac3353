package darkrim.scene;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Normals, areas and plane numbers of facets.
 *
 * <p>The plane of the largest facet is a plane; a facet lies in it when all its corners do, to 2^-47 of the largest coordinate of a facet (64
 * unit roundoffs), and the unit normals agree to 1e-9 in every component, up to the sign of the whole. So all that shares a number lies in
 * one slab, without chains from facet to facet, and nothing that a drawing tells apart shares one: rays that start on a facet pass by all
 * facets of its number. The next largest of the rest is the next plane. Numbers go in the order in which the first facets come.
 */
final class FacetPlanes {
    private static final double FINENESS = 1e-9;
    /** Planes are looked for by bins far wider than the fineness, so that few lie near the border of one. */
    private static final double BIN = 1024 * FINENESS;

    private final double[] corners;
    private final double bound;
    /** Half the thickness of the slab of a plane, mm. */
    private final double thickness;

    private final double[] normals;
    private final double[] areas;
    private final int[] planeOf;
    /** The largest facet of each plane, which defines it. */
    private final List<Integer> leading = new ArrayList<>();

    private final Map<Bin, List<Integer>> planesIn = new HashMap<>();

    /** Sizes of the normal's components and of the distance from the origin: the same whichever way a facet faces. */
    private record Bin(long nx, long ny, long nz, long offset) {}

    private FacetPlanes(double[] corners, double bound) {
        int facets = corners.length / 9;
        this.corners = corners;
        this.bound = bound;
        thickness = 0x1p-47 * bound;
        normals = new double[3 * facets];
        areas = new double[facets];
        planeOf = new int[facets];
        for (int f = 0; f < facets; f++) {
            measure(f);
        }
        for (int f : byFallingArea()) {
            planeOf[f] = findOrClaim(f);
        }
        numberByFirstFacet();
    }

    private int[] byFallingArea() {
        long[] keys = new long[areas.length];
        for (int f = 0; f < keys.length; f++) {
            // The bits of positive floats stand in the order of the floats.
            long falling = (long) Integer.MAX_VALUE - Float.floatToIntBits((float) areas[f]);
            keys[f] = falling << 32 | f;
        }
        Arrays.sort(keys);
        return Arrays.stream(keys).mapToInt(key -> (int) key).toArray();
    }

    private void numberByFirstFacet() {
        int[] numberOf = new int[leading.size()];
        Arrays.fill(numberOf, -1);
        int next = 0;
        for (int f = 0; f < planeOf.length; f++) {
            if (numberOf[planeOf[f]] < 0) {
                numberOf[planeOf[f]] = next++;
            }
            planeOf[f] = numberOf[planeOf[f]];
        }
    }

    /**
     * Measures facets.
     *
     * @param corners nine finite coordinates a facet, mm
     * @param bound no coordinate of a facet is larger than this in size, mm
     * @throws IllegalArgumentException if a facet has no area
     */
    static FacetPlanes of(double[] corners, double bound) {
        return new FacetPlanes(corners, bound);
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
        return leading.size();
    }

    private void measure(int f) {
        double[] normal = doubleAreaNormal(corners, 9 * f);
        double length = Math.sqrt(normal[0] * normal[0] + normal[1] * normal[1] + normal[2] * normal[2]);
        if (!(length > 0 && length < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("facet " + f + " has no area");
        }
        areas[f] = length / 2;
        for (int k = 0; k < 3; k++) {
            normals[3 * f + k] = normal[k] / length;
        }
    }

    private int findOrClaim(int f) {
        double[] sizes = {
            Math.abs(normals[3 * f]), Math.abs(normals[3 * f + 1]), Math.abs(normals[3 * f + 2]), Math.abs(offset(f))
        };
        // Where a size is within the fineness of the border of its bin, the plane may have gone to the bin beyond.
        for (int beyond = 0; beyond < 16; beyond++) {
            Bin bin = bin(sizes, beyond);
            if (bin != null) {
                for (int plane : planesIn.getOrDefault(bin, List.of())) {
                    if (liesIn(f, leading.get(plane))) {
                        return plane;
                    }
                }
            }
        }
        int plane = leading.size();
        leading.add(f);
        planesIn.computeIfAbsent(bin(sizes, 0), key -> new ArrayList<>()).add(plane);
        return plane;
    }

    /** The bin of four sizes, the ones named by the bits of {@code beyond} taken across the near border; null where none is near. */
    private static Bin bin(double[] sizes, int beyond) {
        long[] bins = new long[4];
        for (int k = 0; k < 4; k++) {
            bins[k] = Math.round(sizes[k] / BIN);
            if ((beyond >> k & 1) == 1) {
                long low = Math.round((sizes[k] - FINENESS) / BIN);
                long high = Math.round((sizes[k] + FINENESS) / BIN);
                if (low == high) {
                    return null;
                }
                bins[k] = low == bins[k] ? high : low;
            }
        }
        return new Bin(bins[0], bins[1], bins[2], bins[3]);
    }

    /** Whether facet {@code f} lies in the plane of facet {@code g}. */
    private boolean liesIn(int f, int g) {
        double nx = normals[3 * g];
        double ny = normals[3 * g + 1];
        double nz = normals[3 * g + 2];
        double sign = Math.signum(normals[3 * f] * nx + normals[3 * f + 1] * ny + normals[3 * f + 2] * nz);
        boolean same = true;
        for (int k = 0; k < 3; k++) {
            int at = 9 * f + 3 * k;
            double height = nx * (corners[at] - corners[9 * g])
                    + ny * (corners[at + 1] - corners[9 * g + 1])
                    + nz * (corners[at + 2] - corners[9 * g + 2]);
            same &= Math.abs(height) <= thickness;
            same &= Math.abs(normals[3 * f + k] - sign * normals[3 * g + k]) <= FINENESS;
        }
        return same;
    }

    /** Distance of the facet's plane from the origin along its normal, over the bound. */
    private double offset(int f) {
        return (normals[3 * f] * corners[9 * f]
                        + normals[3 * f + 1] * corners[9 * f + 1]
                        + normals[3 * f + 2] * corners[9 * f + 2])
                / bound;
    }

    /**
     * The normal of a facet, twice its area long: the cross product of the two sides that meet opposite the longest one, which loses least.
     *
     * @param p coordinates, mm
     * @param at where the nine of the facet begin
     */
    static double[] doubleAreaNormal(double[] p, int at) {
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
