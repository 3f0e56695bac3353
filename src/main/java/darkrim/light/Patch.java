package darkrim.light;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A part of a surface: convex pieces of its facets. Immutable. */
public final class Patch {
    private final String name;
    private final Surface surface;
    /** Triangles of the pieces: the facet of each, and the weights a, b of its three corners. */
    private final int[] facets;

    private final double[] weights;
    private final double[] areaUpTo;

    /** A convex piece of a facet. Immutable. */
    public static final class Piece {
        private final int facet;
        private final double[] weights;

        /**
         * @param facet the facet
         * @param weights of each corner of the piece, in turn, the weights of the facet's first and second corner; the third has the rest
         */
        public Piece(int facet, double... weights) {
            this.facet = facet;
            this.weights = weights.clone();
        }

        /** The facet. */
        public int facet() {
            return facet;
        }

        /** Number of corners. */
        public int corners() {
            return weights.length / 2;
        }

        /** A corner, mm. */
        public Vector3D corner(Scene scene, int corner) {
            double a = weights[2 * corner];
            double b = weights[2 * corner + 1];
            return Vector3D.Sum.create()
                    .addScaled(a, scene.corner(facet, 0))
                    .addScaled(b, scene.corner(facet, 1))
                    .addScaled(1 - a - b, scene.corner(facet, 2))
                    .get();
        }
    }

    /**
     * @param name name of its random streams; the same for the same part in every revision
     * @param scene the scene
     * @param surface the surface
     * @param pieces pieces of its facets that do not overlap
     */
    public Patch(String name, Scene scene, Surface surface, List<Piece> pieces) {
        this.name = name;
        this.surface = surface;
        int count = pieces.stream().mapToInt(piece -> piece.corners() - 2).sum();
        facets = new int[count];
        weights = new double[6 * count];
        areaUpTo = new double[count];
        int next = 0;
        double sum = 0;
        for (Piece piece : pieces) {
            for (int i = 2; i < piece.corners(); i++, next++) {
                facets[next] = piece.facet();
                System.arraycopy(piece.weights, 0, weights, 6 * next, 2);
                System.arraycopy(piece.weights, 2 * (i - 1), weights, 6 * next + 2, 4);
                sum += scene.facetArea(piece.facet()) * shareOfFacet(next);
                areaUpTo[next] = sum;
            }
        }
    }

    /** Area of a triangle over that of its facet: the determinant of its weights. */
    private double shareOfFacet(int triangle) {
        int at = 6 * triangle;
        double a1 = weights[at + 2] - weights[at];
        double b1 = weights[at + 3] - weights[at + 1];
        double a2 = weights[at + 4] - weights[at];
        double b2 = weights[at + 5] - weights[at + 1];
        return Math.abs(a1 * b2 - a2 * b1);
    }

    /** Name of its random streams. */
    public String name() {
        return name;
    }

    /** The surface. */
    public Surface surface() {
        return surface;
    }

    /** Area, mm2; 0 where it has no pieces. */
    public double area() {
        return areaUpTo.length == 0 ? 0 : areaUpTo[areaUpTo.length - 1];
    }

    /** Number of triangles. */
    int triangles() {
        return facets.length;
    }

    /** The triangle at a share (0 to 1) of the area. */
    int triangleAt(double share) {
        int found = Arrays.binarySearch(areaUpTo, share * area());
        return Math.min(facets.length - 1, found >= 0 ? found + 1 : -found - 1);
    }

    /** The facet of a triangle. */
    int facet(int triangle) {
        return facets[triangle];
    }

    /**
     * The weight of the facet's first ({@code which} 0) or second (1) corner at a point of a triangle, which is given by the weights of the
     * triangle's own first and second corner.
     */
    double weight(int triangle, double first, double second, int which) {
        int at = 6 * triangle + which;
        return first * weights[at] + second * weights[at + 2] + (1 - first - second) * weights[at + 4];
    }
}
