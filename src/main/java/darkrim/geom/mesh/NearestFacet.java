package darkrim.geom.mesh;

import java.util.Comparator;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Finds how far points are from the facets of a mesh: a tree of boxes over some of its facets. Immutable. */
final class NearestFacet {
    private static final int LEAF = 4;

    private final FacetMesh mesh;
    /** Facets in the order of the tree. */
    private final int[] order;
    /** Box of each node: three least coordinates, then three greatest. Children of node n are 2n + 1 and 2n + 2. */
    private final double[][] boxes;

    /**
     * A tree.
     *
     * @param mesh the mesh
     * @param facets numbers of the facets that count, at least one
     */
    NearestFacet(FacetMesh mesh, int[] facets) {
        this.mesh = mesh;
        this.order = facets.clone();
        int nodes = 1;
        for (int most = order.length; most > LEAF; most = (most + 1) / 2) {
            nodes = 2 * nodes + 1;
        }
        boxes = new double[nodes][];
        build(0, 0, order.length);
    }

    private void build(int node, int from, int to) {
        double[] box = box(from, to);
        boxes[node] = box;
        if (to - from <= LEAF) {
            return;
        }
        int axis = 0;
        for (int k = 1; k < 3; k++) {
            axis = box[3 + k] - box[k] > box[3 + axis] - box[axis] ? k : axis;
        }
        int longest = axis;
        int[] sorted = IntStream.range(from, to)
                .map(i -> order[i])
                .boxed()
                .sorted(Comparator.comparingDouble(facet -> middle(facet, longest)))
                .mapToInt(Integer::intValue)
                .toArray();
        System.arraycopy(sorted, 0, order, from, sorted.length);
        int middle = (from + to + 1) / 2;
        build(2 * node + 1, from, middle);
        build(2 * node + 2, middle, to);
    }

    private double middle(int facet, int axis) {
        return coordinate(facet, 0, axis) + coordinate(facet, 1, axis) + coordinate(facet, 2, axis);
    }

    private double coordinate(int facet, int corner, int axis) {
        return mesh.coordinate(mesh.corner(facet, corner), axis);
    }

    private double[] box(int from, int to) {
        double[] box = new double[6];
        for (int axis = 0; axis < 3; axis++) {
            box[axis] = Double.POSITIVE_INFINITY;
            box[3 + axis] = Double.NEGATIVE_INFINITY;
            for (int i = from; i < to; i++) {
                for (int k = 0; k < 3; k++) {
                    double value = coordinate(order[i], k, axis);
                    box[axis] = Math.min(box[axis], value);
                    box[3 + axis] = Math.max(box[3 + axis], value);
                }
            }
        }
        return box;
    }

    /** The distance of a point from the nearest facet, mm. */
    double distance(Vector3D point) {
        return search(0, 0, order.length, point, Double.POSITIVE_INFINITY);
    }

    private double search(int node, int from, int to, Vector3D point, double best) {
        if (toBox(boxes[node], point) >= best) {
            return best;
        }
        if (to - from <= LEAF) {
            double nearest = best;
            for (int i = from; i < to; i++) {
                int facet = order[i];
                nearest = Math.min(
                        nearest,
                        PointToTriangle.distance(point, mesh.at(facet, 0), mesh.at(facet, 1), mesh.at(facet, 2)));
            }
            return nearest;
        }
        int middle = (from + to + 1) / 2;
        boolean firstIsNearer = toBox(boxes[2 * node + 1], point) <= toBox(boxes[2 * node + 2], point);
        double nearest = firstIsNearer
                ? search(2 * node + 1, from, middle, point, best)
                : search(2 * node + 2, middle, to, point, best);
        return firstIsNearer
                ? search(2 * node + 2, middle, to, point, nearest)
                : search(2 * node + 1, from, middle, point, nearest);
    }

    private static double toBox(double[] box, Vector3D point) {
        double dx = Math.max(0, Math.max(box[0] - point.getX(), point.getX() - box[3]));
        double dy = Math.max(0, Math.max(box[1] - point.getY(), point.getY() - box[4]));
        double dz = Math.max(0, Math.max(box[2] - point.getZ(), point.getZ() - box[5]));
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }
}
