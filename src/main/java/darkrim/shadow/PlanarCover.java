package darkrim.shadow;

import java.util.Arrays;

/**
 * A region of a plane made of loops, and whether it covers a convex polygon.
 *
 * <p>A point is covered if the loops of any one group wind about it a number of times other than 0. The polygon is cut along the edges that
 * run through it until no edge runs through a cell; then one point of a cell speaks for all of it. Cells narrower than three quarters of the
 * gap width need not be covered, as long as all such cells together are not wider than that.
 */
final class PlanarCover {
    /** Cells looked at before giving up; giving up loses a proof, never makes one. */
    private static final int MOST_CELLS = 4000;

    /** Cells narrower than this, all together, need not be covered, mm. */
    private final double narrow;
    /** Four coordinates an edge: from u, v to u, v. */
    private double[] edges = new double[64];

    private int[] groups = new int[16];
    private int count;

    private int cells;
    private double ignored;

    /** @param gap gaps narrower than this count as closed, mm */
    PlanarCover(double gap) {
        // The rest is left for edges that run within a sixteenth of the gap along the side of a cell.
        narrow = 0.75 * gap;
    }

    /** Adds an edge of a loop. */
    void add(double fromU, double fromV, double toU, double toV, int group) {
        if (count == groups.length) {
            groups = Arrays.copyOf(groups, 2 * count);
            edges = Arrays.copyOf(edges, 8 * count);
        }
        edges[4 * count] = fromU;
        edges[4 * count + 1] = fromV;
        edges[4 * count + 2] = toU;
        edges[4 * count + 3] = toV;
        groups[count++] = group;
    }

    /** Whether there is no edge. */
    boolean isEmpty() {
        return count == 0;
    }

    /** Whether a convex polygon, counter-clockwise, is covered. */
    boolean covers(double[] polygon) {
        cells = 0;
        ignored = 0;
        int[] all = new int[count];
        for (int i = 0; i < count; i++) {
            all[i] = i;
        }
        return covered(polygon, all, count);
    }

    private boolean covered(double[] cell, int[] candidates, int candidateCount) {
        double width = width(cell);
        if (width < narrow) {
            ignored += width;
            if (ignored <= narrow) {
                return true;
            }
            ignored -= width;
            return false;
        }
        if (++cells > MOST_CELLS) {
            return false;
        }
        boolean[] bounding = bounding(cell);
        int[] crossing = new int[candidateCount];
        int crossings = 0;
        int longest = -1;
        double length = 0;
        for (int i = 0; i < candidateCount; i++) {
            double inside = lengthInside(cell, bounding, candidates[i]);
            if (inside > 0) {
                crossing[crossings++] = candidates[i];
                if (inside > length) {
                    length = inside;
                    longest = candidates[i];
                }
            }
        }
        if (longest < 0) {
            double[] centre = centre(cell);
            return isInside(centre[0], centre[1]);
        }
        double a = edges[4 * longest + 3] - edges[4 * longest + 1];
        double b = edges[4 * longest] - edges[4 * longest + 2];
        double size = Math.sqrt(a * a + b * b);
        double c = (a * edges[4 * longest] + b * edges[4 * longest + 1]) / size;
        double[] one = PlanarPolygons.clip(cell, a / size, b / size, c);
        double[] other = PlanarPolygons.clip(cell, -a / size, -b / size, -c);
        return (one.length == 0 || covered(one, crossing, crossings))
                && (other.length == 0 || covered(other, crossing, crossings));
    }

    /**
     * Length of an edge within the part of a cell that is a sixteenth of the gap or more away from all sides; 0 if it runs along a side or
     * misses the cell. An edge counts however short it is: a round hole may have no long ones.
     */
    private double lengthInside(double[] cell, boolean[] bounding, int edge) {
        double least = narrow / 16;
        double u0 = edges[4 * edge];
        double v0 = edges[4 * edge + 1];
        double du = edges[4 * edge + 2] - u0;
        double dv = edges[4 * edge + 3] - v0;
        double length = Math.sqrt(du * du + dv * dv);
        if (!(length > 0)) {
            return 0;
        }
        double low = 0;
        double high = 0;
        double from = 0;
        double to = length;
        int n = cell.length / 2;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double pu = cell[2 * i] - u0;
            double pv = cell[2 * i + 1] - v0;
            double across = (du * pv - dv * pu) / length;
            low = Math.min(low, across);
            high = Math.max(high, across);
            if (!bounding[i]) {
                continue;
            }
            // Clip the edge to what lies that far within the side j -> i.
            double su = cell[2 * i] - cell[2 * j];
            double sv = cell[2 * i + 1] - cell[2 * j + 1];
            double height =
                    su * (v0 - cell[2 * j + 1]) - sv * (u0 - cell[2 * j]) - least * Math.sqrt(su * su + sv * sv);
            double slope = (su * dv - sv * du) / length;
            if (slope == 0) {
                if (height < 0) {
                    return 0;
                }
            } else if (slope > 0) {
                from = Math.max(from, -height / slope);
            } else {
                to = Math.min(to, -height / slope);
            }
        }
        return low < -least && high > least && to > from ? to - from : 0;
    }

    /** Which sides, by their second corner, have the whole cell on their inner side: one that is lost in rounding may have any direction. */
    private boolean[] bounding(double[] cell) {
        int n = cell.length / 2;
        boolean[] bounding = new boolean[n];
        for (int i = 0, j = n - 1; i < n; j = i++) {
            bounding[i] = across(cell, j, i)[0] >= -narrow / 64;
        }
        return bounding;
    }

    /** Least and greatest distance of the corners of a cell from one of its sides; not numbers where the side has no length. */
    private static double[] across(double[] cell, int j, int i) {
        double su = cell[2 * i] - cell[2 * j];
        double sv = cell[2 * i + 1] - cell[2 * j + 1];
        double length = Math.sqrt(su * su + sv * sv);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < cell.length; k += 2) {
            double across = (su * (cell[k + 1] - cell[2 * j + 1]) - sv * (cell[k] - cell[2 * j])) / length;
            least = Math.min(least, across);
            most = Math.max(most, across);
        }
        return new double[] {least, most};
    }

    private boolean isInside(double u, double v) {
        int[] tags = new int[count];
        int[] turns = new int[count];
        int used = 0;
        for (int i = 0; i < count; i++) {
            double v0 = edges[4 * i + 1];
            double v1 = edges[4 * i + 3];
            if (v0 <= v == v1 <= v) {
                continue;
            }
            double u0 = edges[4 * i];
            double side = (edges[4 * i + 2] - u0) * (v - v0) - (u - u0) * (v1 - v0);
            boolean upward = v1 > v0;
            if (side > 0 == upward) {
                int at = 0;
                while (at < used && tags[at] != groups[i]) {
                    at++;
                }
                if (at == used) {
                    tags[used++] = groups[i];
                }
                turns[at] += upward ? 1 : -1;
            }
        }
        for (int i = 0; i < used; i++) {
            if (turns[i] != 0) {
                return true;
            }
        }
        return false;
    }

    /** The width of a convex polygon: it is taken square to one of the sides; no direction gives less. */
    private static double width(double[] cell) {
        double least = Double.POSITIVE_INFINITY;
        int n = cell.length / 2;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double[] across = across(cell, j, i);
            if (across[1] >= across[0]) {
                least = Math.min(least, across[1] - across[0]);
            }
        }
        return least < Double.POSITIVE_INFINITY ? least : 0;
    }

    /** The centre of gravity: a third of the width or more away from every side. */
    private static double[] centre(double[] cell) {
        double u = 0;
        double v = 0;
        double sum = 0;
        for (int i = 2; i + 3 < cell.length; i += 2) {
            double au = cell[i] - cell[0];
            double av = cell[i + 1] - cell[1];
            double bu = cell[i + 2] - cell[0];
            double bv = cell[i + 3] - cell[1];
            double area = au * bv - av * bu;
            sum += area;
            u += area * (au + bu);
            v += area * (av + bv);
        }
        return new double[] {cell[0] + u / (3 * sum), cell[1] + v / (3 * sum)};
    }
}
