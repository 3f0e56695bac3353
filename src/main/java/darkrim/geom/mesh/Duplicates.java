package darkrim.geom.mesh;

import java.util.Arrays;

/** Facets between the same three points: of those that face the same way one is kept; two that face opposite ways are named. */
final class Duplicates {
    private Duplicates() {}

    static FacetMesh without(FacetMesh mesh, FlawList flaws) {
        MeshEdges edges = new MeshEdges(mesh);
        boolean[] drop = new boolean[mesh.facetCount()];
        boolean[] backToBack = new boolean[mesh.facetCount()];
        for (int e = 0; e < edges.count(); e++) {
            if (edges.sideCount(e) > 1) {
                mark(edges, mesh, e, drop, backToBack);
            }
        }
        for (int f = 0; f < drop.length; f++) {
            if (drop[f]) {
                flaws.add(MeshFlaw.Kind.DUPLICATE, mesh, f);
            } else if (backToBack[f]) {
                flaws.add(MeshFlaw.Kind.BACK_TO_BACK, mesh, f);
            }
        }
        return Facets.without(mesh, drop);
    }

    private static void mark(MeshEdges edges, FacetMesh mesh, int edge, boolean[] drop, boolean[] backToBack) {
        // By the point across the edge, then by direction, then by facet: equal facets stand together, the first of
        // them is kept.
        long[] keys = new long[edges.sideCount(edge)];
        for (int i = 0; i < keys.length; i++) {
            int side = edges.side(edge, i);
            int across = mesh.corner(side / 3, (side + 2) % 3);
            keys[i] = (long) across << 32 | side;
        }
        Arrays.sort(keys);
        for (int i = 0; i < keys.length; ) {
            int end = i;
            int[] kept = {-1, -1};
            while (end < keys.length && keys[end] >>> 32 == keys[i] >>> 32) {
                int side = (int) keys[end];
                int way = edges.from(side) < edges.to(side) ? 0 : 1;
                if (kept[way] >= 0) {
                    drop[side / 3] = true;
                } else {
                    kept[way] = side / 3;
                }
                end++;
            }
            if (kept[0] >= 0 && kept[1] >= 0) {
                backToBack[Math.max(kept[0], kept[1])] = true;
            }
            i = end;
        }
    }
}
