package darkrim.geom.mesh;

import darkrim.geom.UnionFind;
import java.util.Arrays;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Mends what can be mended without a guess and names the rest. In this order: facets without area go; the same facet twice becomes one;
 * points on open edges nearer than a tolerance become one; facets face as their neighbours do; closed shells that face inward are turned,
 * unless they lie inside another shell and so bound a hollow.
 */
public final class Mending {
    /** Points on open edges nearer than this share of the extent are one: ten times what the float of a binary file tells apart. */
    public static final double WELD = 0x1p-20;
    /** Facets narrower than this share of their length are named as slivers. */
    private static final double SLIVER = 1e-4;
    /** More shells that face inward than this take too long to look at one by one. */
    private static final int MOST_INWARD = 1000;

    private Mending() {}

    /**
     * Mends a mesh.
     *
     * @param whole the mesh, in mm
     * @throws IllegalArgumentException if nothing is left, or there are more shells that face inward than can be looked at
     */
    public static MendedMesh of(FacetMesh whole) {
        FlawList flaws = new FlawList();
        FacetMesh mesh = FlatFacets.without(whole, flaws);
        mesh = Duplicates.without(mesh, flaws);
        FacetMesh welded = Welding.of(mesh, WELD * mesh.extent(), flaws);
        if (welded != mesh) {
            mesh = Duplicates.without(FlatFacets.without(welded, flaws), flaws);
        }
        if (mesh.facetCount() == 0) {
            throw new IllegalArgumentException("the mesh has no facet with an area");
        }
        mesh = Winding.agreeing(mesh, flaws);
        MeshEdges edges = new MeshEdges(mesh);
        int[] shellOf = shells(mesh, edges);
        boolean[] closed = closed(edges, shellOf, flaws);
        mesh = outward(mesh, shellOf, closed, flaws);
        slivers(mesh, flaws);
        return new MendedMesh(mesh, shellOf, closed, flaws.all());
    }

    private static int[] shells(FacetMesh mesh, MeshEdges edges) {
        UnionFind joined = new UnionFind(mesh.facetCount());
        for (int e = 0; e < edges.count(); e++) {
            for (int i = 1; i < edges.sideCount(e); i++) {
                joined.join(edges.side(e, 0) / 3, edges.side(e, i) / 3);
            }
        }
        return joined.numbered();
    }

    private static int count(int[] shellOf) {
        int count = 0;
        for (int shell : shellOf) {
            count = Math.max(count, shell + 1);
        }
        return count;
    }

    private static boolean[] closed(MeshEdges edges, int[] shellOf, FlawList flaws) {
        boolean[] closed = new boolean[count(shellOf)];
        Arrays.fill(closed, true);
        for (int e = 0; e < edges.count(); e++) {
            int facet = edges.side(e, 0) / 3;
            if (edges.surplus(e) != 0) {
                closed[shellOf[facet]] = false;
                flaws.add(MeshFlaw.Kind.OPEN_EDGE, edges.middle(e), edges.length(e));
            } else if (edges.sideCount(e) > 2) {
                flaws.add(MeshFlaw.Kind.NON_MANIFOLD, edges.middle(e), edges.length(e));
            }
        }
        return closed;
    }

    private static FacetMesh outward(FacetMesh mesh, int[] shellOf, boolean[] closed, FlawList flaws) {
        int[] first = new int[closed.length];
        for (int f = mesh.facetCount() - 1; f >= 0; f--) {
            first[shellOf[f]] = f;
        }
        double[] volume = new double[closed.length];
        for (int f = 0; f < mesh.facetCount(); f++) {
            // About a corner of its own: about the origin the sign of a small shell far away would drown in rounding.
            Vector3D from = mesh.at(first[shellOf[f]], 0);
            Vector3D a = mesh.at(f, 0).subtract(from);
            Vector3D b = mesh.at(f, 1).subtract(from);
            Vector3D c = mesh.at(f, 2).subtract(from);
            volume[shellOf[f]] += a.dot(b.cross(c)) / 6;
        }
        boolean[] outward = new boolean[closed.length];
        int inward = 0;
        for (int s = 0; s < closed.length; s++) {
            outward[s] = closed[s] && volume[s] > 0;
            inward += closed[s] && volume[s] < 0 ? 1 : 0;
        }
        if (inward > MOST_INWARD) {
            throw new IllegalArgumentException(inward + " of its shells face inward, more than " + MOST_INWARD
                    + ": turn them in the program that wrote it");
        }
        boolean[] turnShell = new boolean[closed.length];
        boolean any = false;
        for (int s = 0; s < closed.length && inward > 0; s++) {
            if (closed[s] && volume[s] < 0) {
                double around = WindingNumber.at(FlawList.middle(mesh, first[s]), mesh, shellOf, outward);
                turnShell[s] = around < 0.5;
                any |= turnShell[s];
                if (turnShell[s]) {
                    flaws.add(MeshFlaw.Kind.INSIDE_OUT, mesh, first[s]);
                }
            }
        }
        if (!any) {
            return mesh;
        }
        boolean[] turn = new boolean[mesh.facetCount()];
        for (int f = 0; f < turn.length; f++) {
            turn[f] = turnShell[shellOf[f]];
        }
        return Facets.turned(mesh, turn);
    }

    private static void slivers(FacetMesh mesh, FlawList flaws) {
        for (int f = 0; f < mesh.facetCount(); f++) {
            FacetSize size = FacetSize.of(mesh, f);
            if (size.width() < SLIVER * size.longest()) {
                flaws.add(MeshFlaw.Kind.SLIVER, FlawList.middle(mesh, f), size.width());
            }
        }
    }
}
