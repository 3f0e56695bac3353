package darkrim.reflection;

import darkrim.geom.UnitCircle;
import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * Draws directions from rings about the mirror direction in the disc of direction cosines, each ring met in proportion to its area times a bound
 * of the BRDF in it. The BRDF over the density is then never more than the sum of these products. Immutable.
 */
final class Rings {
    /** No two directions are further apart in direction cosines. */
    static final double WIDEST = 2;

    private final double[] edge;
    private final double[] edge2;
    private final double[] bound;
    private final double[] upTo;

    /**
     * @param edge increasing radii, from 0 to {@link #WIDEST}
     * @param bound no BRDF in ring i is larger
     */
    Rings(double[] edge, IntToDoubleFunction bound) {
        this.edge = edge.clone();
        int count = edge.length - 1;
        edge2 = new double[count + 1];
        this.bound = new double[count];
        upTo = new double[count + 1];
        for (int i = 1; i <= count; i++) {
            edge2[i] = edge[i] * edge[i];
        }
        for (int i = 0; i < count; i++) {
            this.bound[i] = bound.applyAsDouble(i);
            upTo[i + 1] = upTo[i] + Math.PI * (edge2[i + 1] - edge2[i]) * this.bound[i];
        }
    }

    /** Radii from 0 by a first one to {@link #WIDEST}, each the same factor larger than the last. */
    static double[] geometric(double first, int rings) {
        double[] edge = new double[rings + 1];
        for (int i = 1; i <= rings; i++) {
            edge[i] = i == rings ? WIDEST : first * StrictMath.pow(WIDEST / first, (i - 1.0) / (rings - 1));
        }
        return edge;
    }

    /** How many there are. */
    int count() {
        return bound.length;
    }

    /** The inner radius of a ring; that of ring {@link #count} is {@link #WIDEST}. */
    double edge(int ring) {
        return edge[ring];
    }

    /** The BRDF over the density is never more. */
    double sum() {
        return upTo[bound.length];
    }

    /** The ring of a squared radius. */
    int ring(double d2) {
        int found = Arrays.binarySearch(edge2, d2);
        return Math.min(bound.length - 1, found >= 0 ? found : -found - 2);
    }

    /** The density at a squared radius, per projected solid angle. */
    double density(double d2) {
        return bound[ring(d2)] / sum();
    }

    /** As {@link Lobe#sample}. */
    boolean sample(double given, double u, double v, double[] into) {
        double share = u * sum();
        int found = Arrays.binarySearch(upTo, share);
        int ring = Math.min(bound.length - 1, found >= 0 ? found : -found - 2);
        double rest = (share - upTo[ring]) / (upTo[ring + 1] - upTo[ring]);
        double d = Math.sqrt(edge2[ring] + rest * (edge2[ring + 1] - edge2[ring]));
        into[0] = Math.sqrt(Math.max(0, 1 - given * given)) + d * UnitCircle.cosine(v);
        into[1] = d * UnitCircle.sine(v);
        return into[0] * into[0] + into[1] * into[1] < 1;
    }

    /** Square of the distance from the mirror direction: of the sum of both directions, what lies along the surface. */
    static double apart2(double in, double out, double between) {
        double up = in + out;
        return Math.max(0, 2 + 2 * between - up * up);
    }
}
