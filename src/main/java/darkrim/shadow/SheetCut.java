package darkrim.shadow;

import darkrim.geom.UnionFind;
import java.util.Arrays;

/**
 * Shows that a set of facets cuts a whole shaft, as a sheet of paper cuts a beam.
 *
 * <p>Take facets M so that no edge at which an odd number of them meet touches the shaft, and none of them touches the piece of the pupil
 * or of the face. Move a line of the shaft to any other: its ends never pass through M, and it never passes the rim of M, so the number of
 * times it meets M stays odd or stays even. Hence: <b>if one line meets M an odd number of times, every line of the shaft is blocked.</b>
 * (Intersection number modulo 2 is unchanged by such a movement: Guillemin and Pollack, Differential Topology, 1974, ch. 2.)
 *
 * <p>Candidates for M: facets joined across every edge that may touch the shaft. A plate with openings, a knife edge, a curved tube and a
 * mesh of any kind are all cut in one step, without choosing planes.
 *
 * <p>Edges in the plane of the face or behind it are left out of account: no line comes there before it has arrived. The same holds at the
 * pupil. One thread each.
 */
final class SheetCut {
    /** Lines tried before giving up, where one runs too near an edge to be counted. */
    private static final int LINES = 3;

    private final double[] corners;
    private final FacetEdges edges;

    private final int[] placeOf;
    private final int[] edgeState;
    private int stamp;

    /** Edges that may touch the shaft, as left by the last call. */
    private int[] open = new int[64];

    private int openCount;

    /** @param corners nine coordinates a facet; not changed */
    SheetCut(double[] corners, FacetEdges edges) {
        this.corners = corners;
        this.edges = edges;
        placeOf = new int[edges.facetCount()];
        edgeState = new int[edges.count()];
    }

    /** Creased or free edges that may touch the shaft of the last call: where it may be cut in two to advantage. */
    int openCount() {
        return openCount;
    }

    /** One of them, by number from 0. */
    int open(int number) {
        return open[number];
    }

    /**
     * Whether a sheet cuts the shaft.
     *
     * @param shaft the shaft
     * @param pair the two pieces
     * @param facets facets that may touch the shaft; all others are apart from it
     */
    boolean cuts(Shaft shaft, Pair pair, int[] facets) {
        openCount = 0;
        if (facets.length == 0) {
            return false;
        }
        stamp++;
        int n = facets.length;
        boolean[] left = new boolean[n];
        boolean[] leaky = new boolean[n];
        for (int i = 0; i < n; i++) {
            int f = facets[i];
            left[i] = pair.isOutOfReach(corners, 9 * f);
            placeOf[f] = left[i] ? -1 : i;
            leaky[i] = !left[i] && pair.isTouchedBy(corners, 9 * f);
        }
        UnionFind patches = new UnionFind(n);
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < 3 && !left[i]; k++) {
                int edge = edges.of(facets[i], k);
                if (edgeState[edge] != stamp) {
                    edgeState[edge] = stamp;
                    if (!pair.isEdgeOutOfReach(edges.ends(), 6 * edge)
                            && !shaft.apartFromEdge(edges.ends(), 6 * edge)) {
                        joinAcross(edge, i, facets, patches, leaky);
                    }
                }
            }
        }
        for (int i = 0; i < n; i++) {
            if (leaky[i]) {
                leaky[patches.find(i)] = true;
            }
        }
        return countsOdd(pair, facets, left, leaky, patches);
    }

    private void joinAcross(int edge, int i, int[] facets, UnionFind patches, boolean[] leaky) {
        int uses = edges.useCount(edge);
        for (int u = 0; u < uses; u++) {
            int other = edges.use(edge, u);
            int place = placeOf[other];
            if (place < 0 || place >= facets.length || facets[place] != other) {
                leaky[i] = true;
            } else {
                patches.join(i, place);
            }
        }
        if (uses % 2 != 0) {
            leaky[i] = true;
        }
        if (edges.isCrease(edge)) {
            if (openCount == open.length) {
                open = Arrays.copyOf(open, 2 * openCount);
            }
            open[openCount++] = edge;
        }
    }

    private boolean countsOdd(Pair pair, int[] facets, boolean[] left, boolean[] leaky, UnionFind patches) {
        int n = facets.length;
        int[] crossings = new int[n];
        for (int line = 0; line < LINES; line++) {
            Arrays.fill(crossings, 0);
            double[] from = pair.pupilPoint(line);
            double[] to = pair.facePoint(2 * line);
            boolean[] unsure = new boolean[n];
            boolean anyUnsure = false;
            for (int i = 0; i < n; i++) {
                int patch = patches.find(i);
                if (!left[i] && !leaky[patch]) {
                    Crossing crossing = Crossing.of(from, to, corners, 9 * facets[i]);
                    crossings[patch] += crossing == Crossing.YES ? 1 : 0;
                    unsure[patch] |= crossing == Crossing.UNSURE;
                    anyUnsure |= crossing == Crossing.UNSURE;
                }
            }
            for (int i = 0; i < n; i++) {
                if (crossings[i] % 2 != 0 && !unsure[i]) {
                    return true;
                }
            }
            if (!anyUnsure) {
                return false;
            }
        }
        return false;
    }
}
