package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.scene.Scene;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Shows that a shaft is blocked where it crosses a plane: the hull of its crossings lies inside solid material of that plane. This closes
 * what several parts block together although they share no edges: parts that touch, with joints and corners of one on the side of another.
 *
 * <p>Planes tried: those of facets in the way, with all facets in them; and slices through closed solids, where the middle line of the shaft
 * is inside material, square to the line and along the facets where it enters and leaves. A slice blocks because a line that is inside a
 * closed solid somewhere, and comes from outside of it, has met its surface. One thread each.
 */
final class CoverCut {
    /** Lines flatter than this against a plane are not judged in it. */
    private static final double FLATTEST = 1e-3;

    /** Planes that meet at less than this slope have no line in common that is known well enough to cut along. */
    private static final double LEAST_SINE = 1 / 16.0;

    private static final int MOST_PLANES = 16;

    private final Scene scene;
    private final double[] corners;
    private final FacetEdges edges;
    private final Tolerance tolerance;
    private int remembered = -1;

    /** @param corners nine coordinates a facet; not changed */
    CoverCut(Scene scene, double[] corners, FacetEdges edges, Tolerance tolerance) {
        this.scene = scene;
        this.corners = corners;
        this.edges = edges;
        this.tolerance = tolerance;
    }

    /**
     * Whether material in some plane covers the shaft.
     *
     * @param facets facets that may touch the shaft
     */
    boolean covers(Shaft shaft, Pair pair, int[] facets) {
        Set<Integer> planes = new LinkedHashSet<>();
        boolean several = false;
        int first = -1;
        for (int f : facets) {
            if (!pair.isOutOfReach(corners, 9 * f)) {
                first = first < 0 ? edges.solid(f) : first;
                several |= edges.solid(f) != first;
                if (scene.plane(f) == remembered) {
                    planes = withFirst(remembered, planes);
                } else {
                    planes.add(scene.plane(f));
                }
            }
        }
        if (!(several ? anyTouch(pair, facets) : anyShared(facets))) {
            return false;
        }
        int tried = 0;
        for (int plane : planes) {
            if (tried++ == MOST_PLANES) {
                break;
            }
            if (coveredInPlane(plane, shaft, pair, facets)) {
                remembered = plane;
                return true;
            }
        }
        return new SliceCut(corners, edges, tolerance).covers(this, shaft, pair, facets);
    }

    /** Whether more than two facets meet at some edge: sheets that lie on each other cancel as a sheet. */
    private boolean anyShared(int[] facets) {
        for (int f : facets) {
            for (int k = 0; k < 3; k++) {
                if (edges.useCount(edges.of(f, k)) > 2) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether two solids in the way come so near each other that they may touch: only then can a plane do more than a sheet. */
    private boolean anyTouch(Pair pair, int[] facets) {
        Set<Integer> solids = new LinkedHashSet<>();
        for (int f : facets) {
            if (!pair.isOutOfReach(corners, 9 * f)) {
                int solid = edges.solid(f);
                if (!solids.contains(solid)) {
                    for (int other : solids) {
                        if (edges.boxesTouch(solid, other, tolerance.gap())) {
                            return true;
                        }
                    }
                    solids.add(solid);
                }
            }
        }
        return false;
    }

    private static Set<Integer> withFirst(int plane, Set<Integer> planes) {
        Set<Integer> reordered = new LinkedHashSet<>();
        reordered.add(plane);
        reordered.addAll(planes);
        return reordered;
    }

    private boolean coveredInPlane(int plane, Shaft shaft, Pair pair, int[] facets) {
        int leading = -1;
        for (int f : facets) {
            if (scene.plane(f) == plane && (leading < 0 || scene.facetArea(f) > scene.facetArea(leading))) {
                leading = f;
            }
        }
        Frame frame = Frame.about(scene.corner(leading, 0), scene.normal(leading));
        CrossingHull hull = hull(frame, shaft, pair);
        if (hull == null) {
            return false;
        }
        List<Integer> inPlane = new ArrayList<>();
        double off = 0;
        for (int f : facets) {
            if (scene.plane(f) == plane) {
                double farthest = 0;
                for (int k = 0; k < 3; k++) {
                    farthest = Math.max(farthest, Math.abs(Pair.height(frame, corners, 9 * f + 3 * k)));
                }
                if (farthest <= tolerance.flat()) {
                    off = Math.max(off, farthest);
                    inPlane.add(f);
                }
            }
        }
        if ((off + tolerance.rounding()) * hull.amplification() > tolerance.gap() / 16) {
            return false;
        }
        PlanarCover cover = new PlanarCover(tolerance.gap());
        addRim(frame, inPlane, cover);
        return covered(frame, hull, pair, cover);
    }

    /**
     * The crossings of the shaft with a plane that has the pupil on one side and the face on the other; or null. The face may touch the plane
     * with a side, but not lie along it: what is in the plane of a face, the face itself first of all, does not cover it.
     */
    CrossingHull hull(Frame frame, Shaft shaft, Pair pair) {
        double[] pupil = range(frame, shaft.pupil());
        double[] face = range(frame, shaft.face());
        boolean steep = frame.normal().cross(pair.face().frame().normal()).norm() > LEAST_SINE;
        double touching = (steep ? tolerance.flat() : -tolerance.flat()) - shaft.radius();
        boolean between = (pupil[0] > tolerance.flat() && face[1] <= touching)
                || (pupil[1] < -tolerance.flat() && face[0] >= -touching);
        return between ? CrossingHull.of(frame, shaft.pupil(), shaft.face(), shaft.radius(), FLATTEST) : null;
    }

    /** Whether a cover hides the crossings, apart from what lies behind the face or the pupil. */
    boolean covered(Frame frame, CrossingHull hull, Pair pair, PlanarCover cover) {
        double[] cell = hull.grownBy(tolerance.gap());
        if (pair.radius() == 0) {
            cell = inFront(cell, frame, pair.face().frame());
        }
        if (cell.length > 0) {
            cell = inFront(cell, frame, pair.pupil().frame());
        }
        return cell.length == 0 || (!cover.isEmpty() && cover.covers(cell));
    }

    private static double[] inFront(double[] cell, Frame frame, Frame limit) {
        double a = limit.normal().dot(frame.u());
        double b = limit.normal().dot(frame.v());
        double size = Math.hypot(a, b);
        return size < LEAST_SINE
                ? cell
                : PlanarPolygons.clip(cell, -a / size, -b / size, limit.height(frame.origin()) / size);
    }

    /** The rim of coplanar facets: sides that two of them share, run through both ways, cancel. */
    private void addRim(Frame frame, List<Integer> facets, PlanarCover cover) {
        int n = facets.size();
        long[] keys = new long[3 * n];
        double[] ends = new double[12 * n];
        for (int i = 0; i < n; i++) {
            int f = facets.get(i);
            boolean turned = scene.normal(f).dot(frame.normal()) < 0;
            for (int k = 0; k < 3; k++) {
                int from = turned ? (k + 1) % 3 : k;
                int to = turned ? k : (k + 1) % 3;
                Vector3D a = scene.corner(f, from);
                Vector3D b = scene.corner(f, to);
                int at = 3 * i + k;
                keys[at] = (long) edges.of(f, k) << 32 | at;
                ends[4 * at] = frame.inU(a);
                ends[4 * at + 1] = frame.inV(a);
                ends[4 * at + 2] = frame.inU(b);
                ends[4 * at + 3] = frame.inV(b);
            }
        }
        Arrays.sort(keys);
        for (int i = 0; i < keys.length; i++) {
            int at = (int) keys[i];
            boolean cancels = i + 1 < keys.length
                    && keys[i] >> 32 == keys[i + 1] >> 32
                    && ends[4 * at] == ends[4 * (int) keys[i + 1] + 2]
                    && ends[4 * at + 1] == ends[4 * (int) keys[i + 1] + 3];
            if (cancels) {
                i++;
            } else {
                cover.add(ends[4 * at], ends[4 * at + 1], ends[4 * at + 2], ends[4 * at + 3], 0);
            }
        }
    }

    /** Least and greatest height of points above a plane. */
    static double[] range(Frame frame, double[] points) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points.length; i += 3) {
            double height = Pair.height(frame, points, i);
            low = Math.min(low, height);
            high = Math.max(high, height);
        }
        return new double[] {low, high};
    }
}
