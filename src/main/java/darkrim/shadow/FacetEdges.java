package darkrim.shadow;

import darkrim.geom.UnionFind;
import darkrim.scene.Scene;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import java.util.WeakHashMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Which facets meet at which edge, and which of them close a solid. Facets share an edge when they share both corners to the last bit.
 *
 * <p>A solid here is a set of facets joined by edges; it is closed when every edge is run through as often in one direction as in the
 * other. Immutable.
 */
final class FacetEdges {
    /** As long as their scene is in use. */
    private static final Map<Scene, FacetEdges> KNOWN = Collections.synchronizedMap(new WeakHashMap<>());

    private final int[] edgesOfFacet;
    private final double[] ends;
    private final int[] firstUse;
    private final int[] uses;
    private final int[] solidOfFacet;
    private final boolean[] closed;
    private final boolean[] creased;
    private final int[][] facetsOfSolid;
    /** Six bounds a solid: least x, y, z, greatest x, y, z. */
    private final double[] boxes;

    private record Pair(int low, int high) {}

    /** The edges of a scene, found once: every proof about it asks for them. */
    static FacetEdges of(Scene scene) {
        FacetEdges known = KNOWN.get(scene);
        if (known == null) {
            // Two threads may both find them: the same.
            known = new FacetEdges(scene);
            KNOWN.put(scene, known);
        }
        return known;
    }

    FacetEdges(Scene scene) {
        int facets = scene.facetCount();
        edgesOfFacet = new int[3 * facets];
        int[] sense = new int[3 * facets];
        Map<Corner, Integer> corners = new HashMap<>();
        Map<Pair, Integer> edges = new HashMap<>();
        for (int f = 0; f < facets; f++) {
            int[] id = new int[3];
            for (int k = 0; k < 3; k++) {
                Corner corner = new Corner(scene.corner(f, k, 0), scene.corner(f, k, 1), scene.corner(f, k, 2));
                id[k] = corners.computeIfAbsent(corner, c -> corners.size());
            }
            for (int k = 0; k < 3; k++) {
                int next = (k + 1) % 3;
                boolean upward = id[k] < id[next];
                Pair pair = upward ? new Pair(id[k], id[next]) : new Pair(id[next], id[k]);
                int edge = edges.computeIfAbsent(pair, p -> edges.size());
                edgesOfFacet[3 * f + k] = edge;
                sense[3 * f + k] = upward ? 1 : -1;
            }
        }
        ends = new double[6 * edges.size()];
        for (int i = 0; i < sense.length; i++) {
            int low = sense[i] > 0 ? i % 3 : (i + 1) % 3;
            int high = sense[i] > 0 ? (i + 1) % 3 : i % 3;
            for (int axis = 0; axis < 3; axis++) {
                ends[6 * edgesOfFacet[i] + axis] = scene.corner(i / 3, low, axis);
                ends[6 * edgesOfFacet[i] + 3 + axis] = scene.corner(i / 3, high, axis);
            }
        }
        firstUse = new int[edges.size() + 1];
        for (int edge : edgesOfFacet) {
            firstUse[edge + 1]++;
        }
        for (int e = 0; e < edges.size(); e++) {
            firstUse[e + 1] += firstUse[e];
        }
        uses = new int[3 * facets];
        int[] next = firstUse.clone();
        for (int i = 0; i < edgesOfFacet.length; i++) {
            uses[next[edgesOfFacet[i]]++] = i / 3;
        }
        creased = new boolean[edges.size()];
        for (int e = 0; e < edges.size(); e++) {
            creased[e] = useCount(e) != 2 || scene.plane(use(e, 0)) != scene.plane(use(e, 1));
        }
        UnionFind joined = new UnionFind(facets);
        for (int e = 0; e < edges.size(); e++) {
            for (int u = firstUse[e] + 1; u < firstUse[e + 1]; u++) {
                joined.join(uses[firstUse[e]], uses[u]);
            }
        }
        solidOfFacet = joined.numbered();
        int solids = Arrays.stream(solidOfFacet).max().orElse(-1) + 1;
        closed = new boolean[solids];
        Arrays.fill(closed, true);
        int[] balance = new int[edges.size()];
        for (int i = 0; i < edgesOfFacet.length; i++) {
            balance[edgesOfFacet[i]] += sense[i];
        }
        for (int i = 0; i < edgesOfFacet.length; i++) {
            closed[solidOfFacet[i / 3]] &= balance[edgesOfFacet[i]] == 0;
        }
        boxes = boxes(scene, solids);
        int[] sizes = new int[solids];
        for (int solid : solidOfFacet) {
            sizes[solid]++;
        }
        facetsOfSolid = new int[solids][];
        for (int s = 0; s < solids; s++) {
            facetsOfSolid[s] = new int[sizes[s]];
        }
        for (int f = facets - 1; f >= 0; f--) {
            facetsOfSolid[solidOfFacet[f]][--sizes[solidOfFacet[f]]] = f;
        }
    }

    private double[] boxes(Scene scene, int solids) {
        double[] found = new double[6 * solids];
        for (int s = 0; s < solids; s++) {
            Arrays.fill(found, 6 * s, 6 * s + 3, Double.POSITIVE_INFINITY);
            Arrays.fill(found, 6 * s + 3, 6 * s + 6, Double.NEGATIVE_INFINITY);
        }
        for (int f = 0; f < solidOfFacet.length; f++) {
            int at = 6 * solidOfFacet[f];
            for (int i = 0; i < 9; i++) {
                double coordinate = scene.corner(f, i / 3, i % 3);
                found[at + i % 3] = Math.min(found[at + i % 3], coordinate);
                found[at + 3 + i % 3] = Math.max(found[at + 3 + i % 3], coordinate);
            }
        }
        return found;
    }

    /** Whether the boxes about two solids come nearer than a distance. */
    boolean boxesTouch(int solid, int other, double distance) {
        for (int k = 0; k < 3; k++) {
            if (boxes[6 * solid + k] > boxes[6 * other + 3 + k] + distance
                    || boxes[6 * other + k] > boxes[6 * solid + 3 + k] + distance) {
                return false;
            }
        }
        return true;
    }

    /** Whether the box about a solid comes nearer than a distance to the box about some points, three coordinates each. */
    boolean boxTouches(int solid, double[] points, double distance) {
        for (int k = 0; k < 3; k++) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int i = k; i < points.length; i += 3) {
                low = Math.min(low, points[i]);
                high = Math.max(high, points[i]);
            }
            if (low > boxes[6 * solid + 3 + k] + distance || high < boxes[6 * solid + k] - distance) {
                return false;
            }
        }
        return true;
    }

    /** Bound {@code k} of the box about a solid: least x, y, z, greatest x, y, z. */
    double bound(int solid, int k) {
        return boxes[6 * solid + k];
    }

    /** Number of edges. */
    int count() {
        return firstUse.length - 1;
    }

    /** Number of facets. */
    int facetCount() {
        return solidOfFacet.length;
    }

    /** Edge {@code k} (0 to 2) of a facet; it leaves corner {@code k}. */
    int of(int facet, int k) {
        return edgesOfFacet[3 * facet + k];
    }

    /** Six coordinates an edge; not copied. */
    double[] ends() {
        return ends;
    }

    /** How many facets meet at an edge. */
    int useCount(int edge) {
        return firstUse[edge + 1] - firstUse[edge];
    }

    /** The facets that meet at an edge, by number from 0. */
    int use(int edge, int number) {
        return uses[firstUse[edge] + number];
    }

    /** Whether an edge shows: it is free, or more than two facets meet there, or two that lie in different planes. */
    boolean isCrease(int edge) {
        return creased[edge];
    }

    /** The middle of an edge, mm. */
    Vector3D middle(int edge) {
        int at = 6 * edge;
        return Vector3D.of(
                0.5 * (ends[at] + ends[at + 3]),
                0.5 * (ends[at + 1] + ends[at + 4]),
                0.5 * (ends[at + 2] + ends[at + 5]));
    }

    /** The solid of a facet. */
    int solid(int facet) {
        return solidOfFacet[facet];
    }

    /** Whether a solid is closed. */
    boolean isClosed(int solid) {
        return closed[solid];
    }

    /** The facets of a solid; not copied. */
    int[] facets(int solid) {
        return facetsOfSolid[solid];
    }
}
