package darkrim.assembly;

import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Questions about a loop of corners seen from +z. */
final class FlatLoop {
    /** Heights and corners that differ by less, mm, differ by rounding only. */
    private static final double ROUNDING = 1e-9;

    private FlatLoop() {}

    /** Whether all corners have one height. */
    static boolean isLevel(List<Vector3D> loop) {
        double z = loop.get(0).getZ();
        return loop.stream().allMatch(corner -> Math.abs(corner.getZ() - z) <= ROUNDING);
    }

    /** Whether every side runs along x or along y. */
    static boolean isSquareToAxes(List<Vector3D> loop) {
        for (int i = 0; i < loop.size(); i++) {
            Vector3D along = loop.get((i + 1) % loop.size()).subtract(loop.get(i));
            if (Math.abs(along.getX()) > ROUNDING && Math.abs(along.getY()) > ROUNDING) {
                return false;
            }
        }
        return true;
    }

    /**
     * Distance of a point from the nearest side of a convex loop, positive inside, mm, both seen from +z.
     *
     * @return empty if the loop is not convex
     */
    static Optional<Double> leastInward(List<Vector3D> loop, Vector3D point) {
        return sense(loop).map(sense -> leastInward(loop, sense, point));
    }

    /**
     * Which way a convex loop runs, seen from +z.
     *
     * @return 1 for counter-clockwise, -1 for clockwise; empty if the loop is not convex
     */
    static Optional<Double> sense(List<Vector3D> loop) {
        double sense = 0;
        for (int i = 0; i < loop.size(); i++) {
            Vector3D from = loop.get(i);
            Vector3D to = loop.get((i + 1) % loop.size());
            Vector3D after = loop.get((i + 2) % loop.size());
            double turn = turn(from, to, after);
            if (Math.abs(turn) > ROUNDING * ROUNDING) {
                if (turn * sense < 0) {
                    return Optional.empty();
                }
                sense = Math.signum(turn);
            }
        }
        return Optional.of(sense);
    }

    /**
     * Distance of a point from the nearest side of a convex loop, positive inside, mm, both seen from +z.
     *
     * @param sense which way the loop runs
     */
    static double leastInward(List<Vector3D> loop, double sense, Vector3D point) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < loop.size(); i++) {
            Vector3D from = loop.get(i);
            Vector3D to = loop.get((i + 1) % loop.size());
            double length = Math.hypot(to.getX() - from.getX(), to.getY() - from.getY());
            least = Math.min(least, sense * turn(from, to, point) / length);
        }
        return least;
    }

    /** Twice the signed area of the triangle, positive for a left turn. */
    private static double turn(Vector3D a, Vector3D b, Vector3D c) {
        return (b.getX() - a.getX()) * (c.getY() - a.getY()) - (b.getY() - a.getY()) * (c.getX() - a.getX());
    }
}
