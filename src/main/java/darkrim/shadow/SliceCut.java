package darkrim.shadow;

import darkrim.geom.Frame;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The slices of {@link CoverCut}: planes through closed solids, and the sections that they cut. */
final class SliceCut {
    private static final int MOST_SLICES = 12;

    private final double[] corners;
    private final FacetEdges edges;
    private final Tolerance tolerance;

    SliceCut(double[] corners, FacetEdges edges, Tolerance tolerance) {
        this.corners = corners;
        this.edges = edges;
        this.tolerance = tolerance;
    }

    /** A place on the middle line where it enters or leaves a solid. */
    private record Step(double at, int facet, int solid, int turn) {}

    /** Whether some slice covers the shaft. */
    boolean covers(CoverCut judge, Shaft shaft, Pair pair, int[] facets) {
        Set<Integer> solids = new HashSet<>();
        for (int f : facets) {
            // Only lines that come from outside a solid are sure to meet its surface.
            if (edges.isClosed(edges.solid(f))
                    && !edges.boxTouches(edges.solid(f), pair.pupil().space(), tolerance.gap())) {
                solids.add(edges.solid(f));
            }
        }
        if (solids.isEmpty()) {
            return false;
        }
        double[] from = pair.pupilPoint(0);
        double[] to = pair.facePoint(0);
        Vector3D start = Vector3D.of(from[0], from[1], from[2]);
        Vector3D line = Vector3D.of(to[0], to[1], to[2]).subtract(start);
        List<Step> steps = steps(from, to, facets, solids);
        int[] winding = new int[solids.stream().mapToInt(s -> s).max().orElse(0) + 1];
        int inside = 0;
        Step entry = null;
        int tried = 0;
        for (Step step : steps) {
            boolean was = winding[step.solid] != 0;
            winding[step.solid] += step.turn;
            boolean is = winding[step.solid] != 0;
            inside += is == was ? 0 : is ? 1 : -1;
            if (is && !was && inside == 1) {
                entry = step;
            } else if (!is && was && inside == 0 && entry != null) {
                Vector3D middle = start.add(line.multiply(0.5 * (entry.at + step.at)));
                Vector3D[] normals = {line, normal(entry.facet), normal(step.facet)};
                for (Vector3D normal : normals) {
                    if (tried++ < MOST_SLICES && coveredInSlice(middle, normal, judge, shaft, pair, solids)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private boolean coveredInSlice(
            Vector3D point, Vector3D normal, CoverCut judge, Shaft shaft, Pair pair, Set<Integer> solids) {
        Frame frame = Frame.about(point, normal);
        CrossingHull hull = judge.hull(frame, shaft, pair);
        if (hull == null || tolerance.rounding() * hull.amplification() > tolerance.gap() / 16) {
            return false;
        }
        PlanarCover cover = new PlanarCover(tolerance.gap());
        for (int solid : solids) {
            addSection(frame, solid, cover);
        }
        return judge.covered(frame, hull, pair, cover);
    }

    /**
     * The section of a closed solid. Corners in the plane count as above it, so that the section is that of a solid whose corners are moved by
     * no more than rounding: its loops are closed. Left out where that would move the section by a sixteenth of the gap.
     */
    void addSection(Frame frame, int solid, PlanarCover cover) {
        int[] facets = edges.facets(solid);
        double[] found = new double[4 * facets.length];
        int count = 0;
        double[] heights = new double[3];
        double[] point = new double[3];
        for (int f : facets) {
            int above = 0;
            for (int k = 0; k < 3; k++) {
                heights[k] = Pair.height(frame, corners, 9 * f + 3 * k);
                above += heights[k] >= 0 ? 1 : 0;
            }
            if (above == 0 || above == 3) {
                continue;
            }
            for (int k = 0; k < 3; k++) {
                int next = (k + 1) % 3;
                boolean up = heights[k] < 0 && heights[next] >= 0;
                boolean down = heights[k] >= 0 && heights[next] < 0;
                if (up || down) {
                    if (!crossing(f, up ? k : next, up ? next : k, heights, point)) {
                        return;
                    }
                    Vector3D p = Vector3D.of(point[0], point[1], point[2]);
                    int at = 4 * count + (down ? 0 : 2);
                    found[at] = frame.inU(p);
                    found[at + 1] = frame.inV(p);
                }
            }
            count++;
        }
        for (int i = 0; i < count; i++) {
            cover.add(found[4 * i], found[4 * i + 1], found[4 * i + 2], found[4 * i + 3], solid);
        }
    }

    /** Where a side from below to above meets the plane; the same bits for both facets at the side. False if too uncertain. */
    private boolean crossing(int facet, int low, int high, double[] heights, double[] into) {
        double rise = heights[high] - heights[low];
        double t = -heights[low] / rise;
        double length = 0;
        for (int k = 0; k < 3; k++) {
            double a = corners[9 * facet + 3 * low + k];
            double b = corners[9 * facet + 3 * high + k];
            into[k] = a + t * (b - a);
            length += Math.abs(b - a);
        }
        return tolerance.rounding() * (1 + length / rise) < tolerance.gap() / 16;
    }

    private List<Step> steps(double[] from, double[] to, int[] facets, Set<Integer> solids) {
        List<Step> steps = new ArrayList<>();
        for (int f : facets) {
            if (solids.contains(edges.solid(f)) && Crossing.of(from, to, corners, 9 * f) == Crossing.YES) {
                Vector3D n = normal(f);
                double start = 0;
                double end = 0;
                for (int k = 0; k < 3; k++) {
                    double component = k == 0 ? n.getX() : k == 1 ? n.getY() : n.getZ();
                    start += component * (from[k] - corners[9 * f + k]);
                    end += component * (to[k] - corners[9 * f + k]);
                }
                steps.add(new Step(start / (start - end), f, edges.solid(f), start > 0 ? 1 : -1));
            }
        }
        steps.sort((a, b) -> Double.compare(a.at, b.at));
        return steps;
    }

    private Vector3D normal(int f) {
        double[] t = Arrays.copyOfRange(corners, 9 * f, 9 * f + 9);
        Vector3D a = Vector3D.of(t[3] - t[0], t[4] - t[1], t[5] - t[2]);
        return a.cross(Vector3D.of(t[6] - t[0], t[7] - t[1], t[8] - t[2])).normalize();
    }
}
