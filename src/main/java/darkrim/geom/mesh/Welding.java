package darkrim.geom.mesh;

import darkrim.geom.UnionFind;
import java.util.HashMap;
import java.util.Map;

/**
 * Joins points on open edges that are nearer to each other than a tolerance: a program that writes the two sides of a seam with different last
 * digits leaves a crack there. Points away from open edges stay as they are, bit for bit.
 */
final class Welding {
    private record Cell(long x, long y, long z) {}

    private Welding() {}

    /**
     * The mesh with such points joined, each to the one with the lowest number.
     *
     * @param tolerance mm
     * @param flaws receives each step
     */
    static FacetMesh of(FacetMesh mesh, double tolerance, FlawList flaws) {
        MeshEdges edges = new MeshEdges(mesh);
        boolean[] onOpenEdge = new boolean[mesh.pointCount()];
        for (int e = 0; e < edges.count(); e++) {
            if (edges.surplus(e) != 0) {
                onOpenEdge[edges.from(edges.side(e, 0))] = true;
                onOpenEdge[edges.to(edges.side(e, 0))] = true;
            }
        }
        UnionFind joined = new UnionFind(mesh.pointCount());
        // A chain of points, each near the next, must not draw one far away: only the first of a cell is compared with.
        Map<Cell, Integer> first = new HashMap<>();
        boolean any = false;
        for (int p = 0; p < mesh.pointCount(); p++) {
            if (onOpenEdge[p]) {
                int near = near(mesh, p, first, tolerance);
                if (near >= 0) {
                    joined.join(near, p);
                    flaws.add(
                            MeshFlaw.Kind.POINTS_MERGED,
                            mesh.point(p),
                            mesh.point(p).distance(mesh.point(near)));
                    any = true;
                } else {
                    first.putIfAbsent(cell(mesh, p, tolerance, 0, 0, 0), p);
                }
            }
        }
        return any ? renumbered(mesh, joined) : mesh;
    }

    /** A point kept before within the tolerance, or -1. */
    private static int near(FacetMesh mesh, int p, Map<Cell, Integer> first, double tolerance) {
        for (int i = 0; i < 27; i++) {
            Integer q = first.get(cell(mesh, p, tolerance, i % 3 - 1, i / 3 % 3 - 1, i / 9 - 1));
            if (q != null && mesh.point(p).distance(mesh.point(q)) <= tolerance) {
                return q;
            }
        }
        return -1;
    }

    private static Cell cell(FacetMesh mesh, int p, double size, int x, int y, int z) {
        return new Cell(
                (long) Math.floor(mesh.coordinate(p, 0) / size) + x,
                (long) Math.floor(mesh.coordinate(p, 1) / size) + y,
                (long) Math.floor(mesh.coordinate(p, 2) / size) + z);
    }

    private static FacetMesh renumbered(FacetMesh mesh, UnionFind joined) {
        int[] corners = new int[3 * mesh.facetCount()];
        int[] groupOf = new int[mesh.facetCount()];
        for (int f = 0; f < groupOf.length; f++) {
            groupOf[f] = mesh.groupOf(f);
            for (int k = 0; k < 3; k++) {
                corners[3 * f + k] = joined.find(mesh.corner(f, k));
            }
        }
        return mesh.with(corners, groupOf);
    }
}
