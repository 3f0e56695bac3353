package darkrim.geom.mesh;

/**
 * Takes out facets without area. One with two equal corners goes without a trace. One whose corner b lies on the side from a to c stands for
 * a seam where one facet meets two: the neighbour across that side is split at b, so that the seam stays closed.
 */
final class FlatFacets {
    /** Facets narrower than this share of the extent have no area: the float of a binary file is far coarser. */
    private static final double NARROWEST = 0x1p-44;
    /** Chains of such facets are undone one after the other. */
    private static final int MOST_ROUNDS = 64;

    private FlatFacets() {}

    static FacetMesh without(FacetMesh whole, FlawList flaws) {
        double narrowest = NARROWEST * Math.max(whole.extent(), Double.MIN_NORMAL);
        FacetMesh mesh = whole;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            FacetMesh fewer = round(mesh, narrowest, round == 0 ? flaws : new FlawList());
            if (fewer == mesh) {
                return mesh;
            }
            mesh = fewer;
        }
        boolean[] drop = new boolean[mesh.facetCount()];
        for (int f = 0; f < drop.length; f++) {
            drop[f] = isFlat(mesh, f, narrowest);
        }
        return Facets.without(mesh, drop);
    }

    static boolean hasEqualCorners(FacetMesh mesh, int f) {
        return mesh.corner(f, 0) == mesh.corner(f, 1)
                || mesh.corner(f, 1) == mesh.corner(f, 2)
                || mesh.corner(f, 2) == mesh.corner(f, 0);
    }

    private static boolean isFlat(FacetMesh mesh, int f, double narrowest) {
        return hasEqualCorners(mesh, f) || !(FacetSize.of(mesh, f).width() > narrowest);
    }

    private static FacetMesh round(FacetMesh mesh, double narrowest, FlawList flaws) {
        boolean[] drop = new boolean[mesh.facetCount()];
        boolean any = false;
        for (int f = 0; f < drop.length; f++) {
            if (isFlat(mesh, f, narrowest)) {
                drop[f] = true;
                any = true;
                flaws.add(MeshFlaw.Kind.WITHOUT_AREA, mesh, f);
            }
        }
        if (!any) {
            return mesh;
        }
        int[] corners = new int[3 * drop.length];
        int[] groupOf = new int[drop.length];
        for (int f = 0; f < drop.length; f++) {
            groupOf[f] = mesh.groupOf(f);
            for (int k = 0; k < 3; k++) {
                corners[3 * f + k] = mesh.corner(f, k);
            }
        }
        MeshEdges edges = new MeshEdges(mesh);
        boolean[] split = new boolean[drop.length];
        for (int f = 0; f < drop.length; f++) {
            if (drop[f] && !hasEqualCorners(mesh, f)) {
                int side = 3 * f + FacetSize.of(mesh, f).side();
                int neighbour = neighbour(edges, side);
                int g = neighbour / 3;
                if (neighbour >= 0 && (split[f] || split[g])) {
                    // Its turn comes in the next round.
                    drop[f] = false;
                } else if (neighbour >= 0 && !hasEqualCorners(mesh, g)) {
                    // The neighbour runs from c to a along the shared side, d is across; b lies between. It becomes c,
                    // b, d; f becomes b, a, d.
                    int c = edges.from(neighbour);
                    int a = edges.to(neighbour);
                    int d = mesh.corner(g, (neighbour + 2) % 3);
                    int b = mesh.corner(f, (side + 2) % 3);
                    if (b != d) {
                        set(corners, g, c, b, d);
                        set(corners, f, b, a, d);
                        groupOf[f] = mesh.groupOf(g);
                        split[f] = true;
                        split[g] = true;
                        drop[f] = false;
                        drop[g] = false;
                    }
                }
            }
        }
        return Facets.without(mesh.with(corners, groupOf), drop);
    }

    private static void set(int[] corners, int f, int a, int b, int c) {
        corners[3 * f] = a;
        corners[3 * f + 1] = b;
        corners[3 * f + 2] = c;
    }

    /** The only other side on the edge of a side, if it runs the other way; otherwise -1. */
    private static int neighbour(MeshEdges edges, int side) {
        int edge = edges.edgeOf(side);
        if (edges.sideCount(edge) != 2 || edges.surplus(edge) != 0) {
            return -1;
        }
        return edges.side(edge, 0) == side ? edges.side(edge, 1) : edges.side(edge, 0);
    }
}
