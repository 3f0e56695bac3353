package darkrim.geom.mesh;

import darkrim.geom.UnionFind;

/**
 * Splits a mesh into faces: neighbours belong to one face where they meet at no more than the crease angle and the file puts them into one
 * group. Faces are numbered by their first facet.
 */
public final class CreaseFaces {
    /** The normal of a facet narrower than this share of the extent means nothing: it goes with the neighbour along its longest side. */
    private static final double NARROW = 4 * Mending.WELD;

    private CreaseFaces() {}

    /**
     * The face of each facet, numbered from 0.
     *
     * @param mesh a mended mesh
     * @param degrees neighbours turned against each other by more than this lie in different faces, 0 to 180
     */
    public static int[] of(FacetMesh mesh, double degrees) {
        MeshEdges edges = new MeshEdges(mesh);
        double least = StrictMath.cos(Math.toRadians(degrees));
        double narrow = NARROW * mesh.extent();
        boolean[] isNarrow = new boolean[mesh.facetCount()];
        for (int f = 0; f < isNarrow.length; f++) {
            isNarrow[f] = FacetSize.of(mesh, f).width() < narrow;
        }
        UnionFind joined = new UnionFind(mesh.facetCount());
        for (int e = 0; e < edges.count(); e++) {
            if (edges.sideCount(e) == 2 && edges.surplus(e) == 0) {
                int f = edges.side(e, 0) / 3;
                int g = edges.side(e, 1) / 3;
                boolean smooth = !isNarrow[f] && !isNarrow[g] && cosine(mesh, f, g) >= least;
                if (mesh.groupOf(f) == mesh.groupOf(g) && (smooth || followsAlong(edges, mesh, e, isNarrow))) {
                    joined.join(f, g);
                }
            }
        }
        return joined.numbered();
    }

    /** Whether the edge is the longest side of a narrow facet. */
    private static boolean followsAlong(MeshEdges edges, FacetMesh mesh, int edge, boolean[] isNarrow) {
        for (int i = 0; i < 2; i++) {
            int side = edges.side(edge, i);
            if (isNarrow[side / 3] && FacetSize.of(mesh, side / 3).side() == side % 3) {
                return true;
            }
        }
        return false;
    }

    private static double cosine(FacetMesh mesh, int f, int g) {
        var a = mesh.doubledNormal(f);
        var b = mesh.doubledNormal(g);
        return a.dot(b) / (a.norm() * b.norm());
    }
}
