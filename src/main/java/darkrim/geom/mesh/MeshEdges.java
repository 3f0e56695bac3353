package darkrim.geom.mesh;

import java.util.Arrays;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The edges of a mesh and the sides of facets that lie on them. Side {@code 3 f + k} runs from corner k of facet f to the next one. Edges are
 * numbered by their points, so that the numbers do not depend on anything but the mesh. Takes O(n log n), whatever the mesh.
 */
final class MeshEdges {
    private final FacetMesh mesh;
    /** Sides, edge after edge. */
    private final int[] sides;
    /** Where the sides of an edge begin; one more at the end. */
    private final int[] firstOf;
    /** Edge of each side. */
    private final int[] edgeOf;

    MeshEdges(FacetMesh mesh) {
        this.mesh = mesh;
        int count = 3 * mesh.facetCount();
        // Sides by their lower point, then by the higher one.
        int[] bucket = new int[mesh.pointCount() + 1];
        for (int s = 0; s < count; s++) {
            bucket[Math.min(from(s), to(s)) + 1]++;
        }
        for (int p = 0; p < mesh.pointCount(); p++) {
            bucket[p + 1] += bucket[p];
        }
        int[] next = Arrays.copyOf(bucket, bucket.length);
        long[] keyed = new long[count];
        for (int s = 0; s < count; s++) {
            keyed[next[Math.min(from(s), to(s))]++] = (long) Math.max(from(s), to(s)) << 32 | s;
        }
        sides = new int[count];
        edgeOf = new int[count];
        int[] starts = new int[count + 1];
        int edges = 0;
        for (int p = 0; p < mesh.pointCount(); p++) {
            Arrays.sort(keyed, bucket[p], bucket[p + 1]);
            for (int i = bucket[p]; i < bucket[p + 1]; i++) {
                if (i == bucket[p] || keyed[i] >>> 32 != keyed[i - 1] >>> 32) {
                    starts[edges++] = i;
                }
                sides[i] = (int) keyed[i];
                edgeOf[sides[i]] = edges - 1;
            }
        }
        starts[edges] = count;
        firstOf = Arrays.copyOf(starts, edges + 1);
    }

    int count() {
        return firstOf.length - 1;
    }

    /** Number of sides on an edge. */
    int sideCount(int edge) {
        return firstOf[edge + 1] - firstOf[edge];
    }

    /** One of the sides on an edge. */
    int side(int edge, int i) {
        return sides[firstOf[edge] + i];
    }

    int edgeOf(int side) {
        return edgeOf[side];
    }

    int from(int side) {
        return mesh.corner(side / 3, side % 3);
    }

    int to(int side) {
        return mesh.corner(side / 3, (side + 1) % 3);
    }

    /** Sides along the edge less those against it: not 0 where light can pass. */
    int surplus(int edge) {
        int surplus = 0;
        for (int i = 0; i < sideCount(edge); i++) {
            int side = side(edge, i);
            surplus += from(side) < to(side) ? 1 : -1;
        }
        return surplus;
    }

    Vector3D middle(int edge) {
        int side = side(edge, 0);
        return mesh.point(from(side)).lerp(mesh.point(to(side)), 0.5);
    }

    double length(int edge) {
        int side = side(edge, 0);
        return mesh.point(from(side)).distance(mesh.point(to(side)));
    }
}
