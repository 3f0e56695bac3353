package darkrim.trace;

import java.util.SplittableRandom;

/** Vectors and turns for the tests of this package. */
final class Turn {
    private Turn() {}

    static double[] minus(double[] a, double[] b) {
        return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
    }

    static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    static double length(double[] a) {
        return Math.sqrt(dot(a, a));
    }

    static double[] unit(double[] a) {
        double length = length(a);
        return new double[] {a[0] / length, a[1] / length, a[2] / length};
    }

    static double[] between(double[] a, double[] b, double t) {
        return new double[] {
            (1 - t) * a[0] + t * b[0], (1 - t) * a[1] + t * b[1], (1 - t) * a[2] + t * b[2],
        };
    }

    /** A direction of unit length, even over the sphere. */
    static double[] direction(SplittableRandom random) {
        double z = 2 * random.nextDouble() - 1;
        double round = 2 * Math.PI * random.nextDouble();
        double r = Math.sqrt((1 - z) * (1 + z));
        return new double[] {r * Math.cos(round), r * Math.sin(round), z};
    }

    /** Three unit rows, square to each other. */
    static double[][] random(SplittableRandom random) {
        double[] a = direction(random);
        double[] c = unit(cross(a, direction(random)));
        return new double[][] {a, cross(c, a), c};
    }

    static double[] apply(double[][] rows, double[] p) {
        return new double[] {dot(rows[0], p), dot(rows[1], p), dot(rows[2], p)};
    }
}
