package darkrim.geom.mesh;

import java.util.Arrays;

/**
 * Turns facets so that neighbours face the same way: from facet to facet across edges with two facets, which must run in opposite
 * directions. In each piece that hangs together so, the fewer facets are turned.
 */
final class Winding {
    private Winding() {}

    static FacetMesh agreeing(FacetMesh mesh, FlawList flaws) {
        MeshEdges edges = new MeshEdges(mesh);
        boolean[] turn = new boolean[mesh.facetCount()];
        boolean[] seen = new boolean[mesh.facetCount()];
        int[] queue = new int[mesh.facetCount()];
        boolean any = false;
        for (int start = 0; start < seen.length; start++) {
            if (!seen[start]) {
                seen[start] = true;
                queue[0] = start;
                any |= spread(mesh, edges, queue, seen, turn, flaws);
            }
        }
        return any ? Facets.turned(mesh, turn) : mesh;
    }

    private static boolean spread(
            FacetMesh mesh, MeshEdges edges, int[] queue, boolean[] seen, boolean[] turn, FlawList flaws) {
        int end = 1;
        int turned = 0;
        for (int at = 0; at < end; at++) {
            int f = queue[at];
            turned += turn[f] ? 1 : 0;
            for (int side = 3 * f; side < 3 * f + 3; side++) {
                int edge = edges.edgeOf(side);
                if (edges.sideCount(edge) == 2) {
                    int other = edges.side(edge, 0) == side ? edges.side(edge, 1) : edges.side(edge, 0);
                    boolean wanted = turn[f] ^ edges.from(other) == edges.from(side);
                    int g = other / 3;
                    if (!seen[g]) {
                        seen[g] = true;
                        turn[g] = wanted;
                        queue[end++] = g;
                    } else if (turn[g] != wanted && f < g) {
                        flaws.add(MeshFlaw.Kind.NOT_ORIENTABLE, mesh, f);
                    }
                }
            }
        }
        boolean most = 2 * turned > end;
        int[] piece = Arrays.copyOf(queue, end);
        boolean any = false;
        for (int f : piece) {
            turn[f] ^= most;
            if (turn[f]) {
                any = true;
                flaws.add(MeshFlaw.Kind.FLIPPED, mesh, f);
            }
        }
        return any;
    }
}
