package darkrim.study.distance;

/**
 * The nearest points of a triangle that is moved along a straight line and of one that stands. What the first sweeps over is a prism; the
 * second is nearest to one of its two ends or three sides, or lies inside. Exact but for rounding. Holds the last answer; for use by one thread.
 */
final class SweptPair {
    /** Nearest point of the moved triangle, then of the other, mm. */
    final double[] points = new double[6];

    /** Share of the way that the triangle has then been moved, 0 to 1. */
    double travel;

    private final TrianglePair pair = new TrianglePair();
    private final double[] way;
    private final double waySquared;
    private final double[] face = new double[9];
    private final double[] edge = new double[3];
    private final double[] other = new double[3];
    private final double[] foot = new double[3];
    private double least;

    /**
     * @param way how far the first triangle is moved, mm
     */
    SweptPair(double[] way) {
        this.way = way.clone();
        this.waySquared = way[0] * way[0] + way[1] * way[1] + way[2] * way[2];
    }

    /** The squared distance over the whole way, mm2. */
    double squared(double[] a, int i, double[] b, int j) {
        least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 9; k++) {
            face[k] = a[i + k];
        }
        look(b, j, 0, false);
        for (int k = 0; k < 9; k++) {
            face[k] = a[i + k] + way[k % 3];
        }
        look(b, j, 1, false);
        for (int k = 0; k < 9 && least > 0; k += 3) {
            int from = i + k;
            int to = i + (k + 3) % 9;
            for (int m = 0; m < 3; m++) {
                face[m] = a[from + m];
                face[3 + m] = a[to + m];
                face[6 + m] = a[to + m] + way[m];
                edge[m] = a[to + m] - a[from + m];
            }
            look(b, j, 0, true);
            for (int m = 0; m < 3; m++) {
                face[3 + m] = face[6 + m];
                face[6 + m] = a[from + m] + way[m];
            }
            look(b, j, 0, true);
            within(a, i, b, j + k);
        }
        return least;
    }

    /** An end of the prism, of which the travel is known, or half of the side that begins at a corner. */
    private void look(double[] b, int j, double known, boolean side) {
        double squared = pair.squared(face, 0, b, j);
        if (squared < least) {
            least = squared;
            System.arraycopy(pair.points, 0, points, 0, 6);
            travel = side ? alongWay() : known;
        }
    }

    /** How far along the way the nearest point of a side lies: what is left of it square to the triangle's side, over that of the way. */
    private double alongWay() {
        double length = edge[0] * edge[0] + edge[1] * edge[1] + edge[2] * edge[2];
        double wayAlong = edge[0] * way[0] + edge[1] * way[1] + edge[2] * way[2];
        double pointAlong = 0;
        double pointWay = 0;
        for (int m = 0; m < 3; m++) {
            double from = points[m] - face[m];
            pointAlong += from * edge[m];
            pointWay += from * way[m];
        }
        double square = length * waySquared - wayAlong * wayAlong;
        double across = square > 0 ? (pointWay * length - pointAlong * wayAlong) / square : pointWay / waySquared;
        return Math.max(0, Math.min(1, across));
    }

    private void within(double[] a, int i, double[] b, int corner) {
        for (int m = 0; m < 3; m++) {
            other[m] = b[corner + m] - way[m];
        }
        if (least > 0 && TrianglePair.crosses(b, corner, other, 0, a, i, foot)) {
            least = 0;
            double along = 0;
            for (int m = 0; m < 3; m++) {
                points[m] = b[corner + m];
                points[3 + m] = b[corner + m];
                along += way[m] * (b[corner + m] - foot[m]);
            }
            travel = along / waySquared;
        }
    }
}
