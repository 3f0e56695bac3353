package darkrim.study.distance;

/**
 * The points of two triangles that are nearest to each other. Of triangles that do not meet they are a corner and a point of the other
 * triangle, or points of two sides; triangles that meet share the point where a side of one passes through the other. All of these are looked
 * at (15 pairs, then 6 sides), so that what is found is never too large but for rounding. Triangles without area count as the segments that
 * they are. Holds the last answer; for use by one thread.
 */
final class TrianglePair {
    /** Nearest point of the first triangle, then of the second, mm. */
    final double[] points = new double[6];

    private double least;
    private final double[] foot = new double[3];

    /**
     * The squared distance, mm2.
     *
     * @param a holds the nine coordinates of the first triangle
     * @param i where they begin
     * @param b holds those of the second
     * @param j where they begin
     */
    double squared(double[] a, int i, double[] b, int j) {
        least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 9; k += 3) {
            corner(a, i + k, b, j, 0);
            corner(b, j + k, a, i, 3);
        }
        for (int k = 0; k < 9; k += 3) {
            for (int m = 0; m < 9; m += 3) {
                sides(a, i + k, i + (k + 3) % 9, b, j + m, j + (m + 3) % 9);
            }
        }
        for (int k = 0; k < 9 && least > 0; k += 3) {
            if (crosses(a, i + k, a, i + (k + 3) % 9, b, j, foot)
                    || crosses(b, j + k, b, j + (k + 3) % 9, a, i, foot)) {
                least = 0;
                System.arraycopy(foot, 0, points, 0, 3);
                System.arraycopy(foot, 0, points, 3, 3);
            }
        }
        return least;
    }

    /** A corner of one triangle against the inside of the other (regions of Ericson, Real-Time Collision Detection, 2005, 5.1.5). */
    private void corner(double[] p, int at, double[] t, int i, int slot) {
        double abx = t[i + 3] - t[i];
        double aby = t[i + 4] - t[i + 1];
        double abz = t[i + 5] - t[i + 2];
        double acx = t[i + 6] - t[i];
        double acy = t[i + 7] - t[i + 1];
        double acz = t[i + 8] - t[i + 2];
        double apx = p[at] - t[i];
        double apy = p[at + 1] - t[i + 1];
        double apz = p[at + 2] - t[i + 2];
        double d1 = abx * apx + aby * apy + abz * apz;
        double d2 = acx * apx + acy * apy + acz * apz;
        double bb = abx * abx + aby * aby + abz * abz;
        double bc = abx * acx + aby * acy + abz * acz;
        double cc = acx * acx + acy * acy + acz * acz;
        double d3 = d1 - bb;
        double d4 = d2 - bc;
        double d5 = d1 - bc;
        double d6 = d2 - cc;
        double va = d3 * d6 - d5 * d4;
        double vb = d5 * d2 - d1 * d6;
        double vc = d1 * d4 - d3 * d2;
        // The rim of the triangle is covered by pairs of sides: only its inside counts here.
        if (va > 0 && vb > 0 && vc > 0) {
            double v = vb / (va + vb + vc);
            double w = vc / (va + vb + vc);
            keep(
                    p[at],
                    p[at + 1],
                    p[at + 2],
                    t[i] + v * abx + w * acx,
                    t[i + 1] + v * aby + w * acy,
                    t[i + 2] + v * abz + w * acz,
                    slot);
        }
    }

    /** Two sides, each from one corner to another (Lumelsky, On fast computation of distance between line segments, 1985). */
    private void sides(double[] a, int p, int q, double[] b, int r, int s) {
        double ux = a[q] - a[p];
        double uy = a[q + 1] - a[p + 1];
        double uz = a[q + 2] - a[p + 2];
        double vx = b[s] - b[r];
        double vy = b[s + 1] - b[r + 1];
        double vz = b[s + 2] - b[r + 2];
        double wx = b[r] - a[p];
        double wy = b[r + 1] - a[p + 1];
        double wz = b[r + 2] - a[p + 2];
        double uu = ux * ux + uy * uy + uz * uz;
        double vv = vx * vx + vy * vy + vz * vz;
        double uv = ux * vx + uy * vy + uz * vz;
        double uw = ux * wx + uy * wy + uz * wz;
        double vw = vx * wx + vy * wy + vz * wz;
        // The squared length of the cross product, without the cancellation of uu vv - uv^2.
        double cx = uy * vz - uz * vy;
        double cy = uz * vx - ux * vz;
        double cz = ux * vy - uy * vx;
        double squared = cx * cx + cy * cy + cz * cz;
        double onFirst = 0;
        if (squared > 0) {
            onFirst = clamp(((wy * vz - wz * vy) * cx + (wz * vx - wx * vz) * cy + (wx * vy - wy * vx) * cz) / squared);
        }
        double onSecond = vv > 0 ? clamp((onFirst * uv - vw) / vv) : 0;
        onFirst = uu > 0 ? clamp((onSecond * uv + uw) / uu) : 0;
        onSecond = vv > 0 ? clamp((onFirst * uv - vw) / vv) : 0;
        keepSides(a, p, ux, uy, uz, onFirst, b, r, vx, vy, vz, onSecond);
        // Sides that are nearly parallel are nearest at an end, which the way above may miss.
        if (squared <= 1e-8 * uu * vv) {
            for (int end = 0; end < 2; end++) {
                keepSides(a, p, ux, uy, uz, end, b, r, vx, vy, vz, vv > 0 ? clamp((end * uv - vw) / vv) : 0);
                keepSides(a, p, ux, uy, uz, uu > 0 ? clamp((end * uv + uw) / uu) : 0, b, r, vx, vy, vz, end);
            }
        }
    }

    private static double clamp(double share) {
        return share > 1 ? 1 : share > 0 ? share : 0;
    }

    private void keepSides(
            double[] a,
            int p,
            double ux,
            double uy,
            double uz,
            double onFirst,
            double[] b,
            int r,
            double vx,
            double vy,
            double vz,
            double onSecond) {
        keep(
                a[p] + onFirst * ux,
                a[p + 1] + onFirst * uy,
                a[p + 2] + onFirst * uz,
                b[r] + onSecond * vx,
                b[r + 1] + onSecond * vy,
                b[r + 2] + onSecond * vz,
                0);
    }

    private void keep(double px, double py, double pz, double qx, double qy, double qz, int slot) {
        double dx = px - qx;
        double dy = py - qy;
        double dz = pz - qz;
        double squared = dx * dx + dy * dy + dz * dz;
        if (squared < least) {
            least = squared;
            points[slot] = px;
            points[slot + 1] = py;
            points[slot + 2] = pz;
            points[3 - slot] = qx;
            points[4 - slot] = qy;
            points[5 - slot] = qz;
        }
    }

    /**
     * Whether a segment passes through a triangle, by the signs of the volumes between the segment and the sides.
     *
     * @param p holds one end, from index {@code i}
     * @param q holds the other, from index {@code j}
     * @param t holds the triangle, from index {@code k}
     * @param at receives the point
     */
    static boolean crosses(double[] p, int i, double[] q, int j, double[] t, int k, double[] at) {
        double abx = t[k + 3] - t[k];
        double aby = t[k + 4] - t[k + 1];
        double abz = t[k + 5] - t[k + 2];
        double acx = t[k + 6] - t[k];
        double acy = t[k + 7] - t[k + 1];
        double acz = t[k + 8] - t[k + 2];
        double nx = aby * acz - abz * acy;
        double ny = abz * acx - abx * acz;
        double nz = abx * acy - aby * acx;
        double from = nx * (p[i] - t[k]) + ny * (p[i + 1] - t[k + 1]) + nz * (p[i + 2] - t[k + 2]);
        double to = nx * (q[j] - t[k]) + ny * (q[j + 1] - t[k + 1]) + nz * (q[j + 2] - t[k + 2]);
        if ((from > 0 && to > 0) || (from < 0 && to < 0) || from == to) {
            return false;
        }
        double share = from / (from - to);
        double x = p[i] + share * (q[j] - p[i]);
        double y = p[i + 1] + share * (q[j + 1] - p[i + 1]);
        double z = p[i + 2] + share * (q[j + 2] - p[i + 2]);
        for (int side = 0; side < 9; side += 3) {
            int a = k + side;
            int b = k + (side + 3) % 9;
            double ex = t[b] - t[a];
            double ey = t[b + 1] - t[a + 1];
            double ez = t[b + 2] - t[a + 2];
            double rx = x - t[a];
            double ry = y - t[a + 1];
            double rz = z - t[a + 2];
            double left = nx * (ey * rz - ez * ry) + ny * (ez * rx - ex * rz) + nz * (ex * ry - ey * rx);
            if (left < 0) {
                return false;
            }
        }
        at[0] = x;
        at[1] = y;
        at[2] = z;
        return true;
    }
}
