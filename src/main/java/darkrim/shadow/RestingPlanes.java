package darkrim.shadow;

import java.util.ArrayList;
import java.util.List;

/**
 * Walls that a piece of a face rests against with a side: their planes leave both the face and the pupil on one side, so no line between them
 * meets what lies on the other, such as the ends and the top of the wall. What is passed over is a strip of the face no wider than rounding,
 * as {@link Pair#isBeside} has it. The planes are looked for only when they are asked for. One pair, one thread.
 */
final class RestingPlanes {
    /** Planes beyond so many are not used. */
    private static final int MOST = 8;

    private final Pair pair;
    private final double[] corners;
    private final int[] facets;
    private List<double[]> planes;

    /**
     * @param pair the pieces of the pupil and of the face
     * @param corners nine coordinates a facet; not changed
     * @param facets numbers of the facets in the way
     */
    RestingPlanes(Pair pair, double[] corners, int[] facets) {
        this.pair = pair;
        this.corners = corners;
        this.facets = facets;
    }

    /** Whether a triangle lies behind one of the planes, or in it. */
    boolean hide(int at) {
        if (planes == null) {
            planes = find();
        }
        double rounding = pair.tolerance().rounding();
        return planes.stream().anyMatch(plane -> highest(plane, at) <= rounding);
    }

    private List<double[]> find() {
        List<double[]> found = new ArrayList<>();
        for (int i = 0; i < facets.length && found.size() < MOST; i++) {
            double[] plane = pair.restingPlane(corners, 9 * facets[i]);
            if (plane.length > 0) {
                found.add(plane);
            }
        }
        return found;
    }

    private double highest(double[] plane, int at) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = at; i < at + 9; i += 3) {
            double height = plane[0] * corners[i] + plane[1] * corners[i + 1] + plane[2] * corners[i + 2] - plane[3];
            most = Math.max(most, height);
        }
        return most;
    }
}
