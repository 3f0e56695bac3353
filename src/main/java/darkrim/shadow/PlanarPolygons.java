package darkrim.shadow;

import java.util.Arrays;

/** Clipping, area and hull of convex polygons held as flat arrays of u, v; counter-clockwise. */
final class PlanarPolygons {
    /** Coordinates from which on inner points are left out first: the hull of all corners of a grown face has thousands. */
    private static final int MANY = 64;

    /** Eight directions, counter-clockwise. */
    private static final double[] DIRECTIONS = {1, 0, 1, 1, 0, 1, -1, 1, -1, 0, -1, -1, 0, -1, 1, -1};

    private PlanarPolygons() {}

    /** Area; positive when counter-clockwise. */
    static double area(double[] corners) {
        double sum = 0;
        double u0 = corners[0];
        double v0 = corners[1];
        for (int i = 2; i + 3 < corners.length; i += 2) {
            sum += (corners[i] - u0) * (corners[i + 3] - v0) - (corners[i + 1] - v0) * (corners[i + 2] - u0);
        }
        return sum / 2;
    }

    /**
     * Keeps the part of a convex polygon where a u + b v {@literal <=} c (Sutherland and Hodgman 1974, one line).
     *
     * @return the same array if nothing was cut off; an empty one if nothing is left
     */
    static double[] clip(double[] corners, double a, double b, double c) {
        int n = corners.length / 2;
        boolean cut = false;
        double[] out = new double[corners.length + 4];
        int size = 0;
        double before = a * corners[2 * n - 2] + b * corners[2 * n - 1] - c;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double at = a * corners[2 * i] + b * corners[2 * i + 1] - c;
            if ((before > 0 && at < 0) || (before < 0 && at > 0)) {
                // Negating a, b, c gives the same value: both halves of a piece share the point.
                double t = before / (before - at);
                if (size + 2 > out.length) {
                    out = Arrays.copyOf(out, 2 * out.length);
                }
                out[size++] = corners[2 * j] + t * (corners[2 * i] - corners[2 * j]);
                out[size++] = corners[2 * j + 1] + t * (corners[2 * i + 1] - corners[2 * j + 1]);
            }
            if (at <= 0) {
                if (size + 2 > out.length) {
                    out = Arrays.copyOf(out, 2 * out.length);
                }
                out[size++] = corners[2 * i];
                out[size++] = corners[2 * i + 1];
            } else {
                cut = true;
            }
            before = at;
        }
        if (!cut) {
            return corners;
        }
        return size < 6 ? new double[0] : Arrays.copyOf(out, size);
    }

    /** Convex hull of points, without corners on its sides (Andrew's monotone chain, 1979). */
    static double[] hull(double[] all) {
        double[] points = all.length > MANY ? withoutInner(all) : all;
        int n = points.length / 2;
        Integer[] order = new Integer[n];
        for (int i = 0; i < n; i++) {
            order[i] = i;
        }
        Arrays.sort(order, (i, j) -> {
            int first = Double.compare(points[2 * i], points[2 * j]);
            return first != 0 ? first : Double.compare(points[2 * i + 1], points[2 * j + 1]);
        });
        int[] chain = new int[2 * n + 2];
        int size = 0;
        for (int i = 0; i < n; i++) {
            size = push(points, chain, size, order[i], 0);
        }
        int lower = size;
        for (int i = n - 2; i >= 0; i--) {
            size = push(points, chain, size, order[i], lower - 1);
        }
        size = Math.max(1, size - 1);
        double[] hull = new double[2 * size];
        for (int i = 0; i < size; i++) {
            hull[2 * i] = points[2 * chain[i]];
            hull[2 * i + 1] = points[2 * chain[i] + 1];
        }
        return hull;
    }

    /** Without points plainly inside the octagon of the points that lie farthest along eight directions (Akl and Toussaint 1978). */
    private static double[] withoutInner(double[] points) {
        int[] far = new int[DIRECTIONS.length / 2];
        double[] most = new double[far.length];
        Arrays.fill(most, Double.NEGATIVE_INFINITY);
        for (int i = 0; i < points.length; i += 2) {
            for (int k = 0; k < far.length; k++) {
                double along = DIRECTIONS[2 * k] * points[i] + DIRECTIONS[2 * k + 1] * points[i + 1];
                if (along > most[k]) {
                    most[k] = along;
                    far[k] = i / 2;
                }
            }
        }
        // Far more than the rounding of a turn: what is left out lies inside without doubt.
        double size = Math.max(most[0] + most[4], most[2] + most[6]);
        double plainly = 1e-9 * size * size;
        double[] kept = new double[points.length];
        int count = 0;
        for (int i = 0; i < points.length / 2; i++) {
            boolean inside = true;
            for (int k = 0; k < far.length && inside; k++) {
                int next = far[(k + 1) % far.length];
                inside = far[k] == next || turn(points, far[k], next, i) > plainly;
            }
            if (!inside) {
                kept[count++] = points[2 * i];
                kept[count++] = points[2 * i + 1];
            }
        }
        return count == 0 ? points : Arrays.copyOf(kept, count);
    }

    private static int push(double[] p, int[] chain, int size, int next, int floor) {
        int top = size;
        while (top - floor >= 2 && turn(p, chain[top - 2], chain[top - 1], next) <= 0) {
            top--;
        }
        chain[top++] = next;
        return top;
    }

    private static double turn(double[] p, int a, int b, int c) {
        // Taken at b: where c lies very near b their difference is exact, and so is the sign.
        return (p[2 * b] - p[2 * a]) * (p[2 * c + 1] - p[2 * b + 1])
                - (p[2 * b + 1] - p[2 * a + 1]) * (p[2 * c] - p[2 * b]);
    }
}
