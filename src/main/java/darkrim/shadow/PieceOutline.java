package darkrim.shadow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Gathers the stretches and arcs of a rim and joins them to closed loops, for drawing. */
final class PieceOutline implements PupilView.Rim {
    private static final double NEAR = 1e-9;

    private final List<double[]> chains = new ArrayList<>();

    @Override
    public void straight(double u0, double v0, double u1, double v1) {
        chains.add(new double[] {u0, v0, u1, v1});
    }

    @Override
    public void arc(Circle circle, double from, double to) {
        int steps = (int) Math.max(1, Math.ceil(Math.abs(to - from) * 180 / Math.PI));
        double[] chain = new double[2 * steps + 2];
        for (int i = 0; i <= steps; i++) {
            double angle = from + (to - from) * i / steps;
            chain[2 * i] = circle.u() + circle.radius() * Math.cos(angle);
            chain[2 * i + 1] = circle.v() + circle.radius() * Math.sin(angle);
        }
        chains.add(chain);
    }

    /** The loops; a chain that finds no next one is closed by a straight line. */
    List<double[]> loops() {
        List<double[]> loops = new ArrayList<>();
        List<double[]> left = new ArrayList<>(chains);
        while (!left.isEmpty()) {
            double[] loop = left.remove(left.size() - 1);
            int next = next(left, loop);
            while (next >= 0) {
                loop = joined(loop, left.remove(next));
                next = next(left, loop);
            }
            if (loop.length >= 6) {
                loops.add(loop);
            }
        }
        return loops;
    }

    private static int next(List<double[]> left, double[] loop) {
        double u = loop[loop.length - 2];
        double v = loop[loop.length - 1];
        double size = NEAR * (1 + Math.abs(u) + Math.abs(v));
        for (int i = 0; i < left.size(); i++) {
            if (Math.abs(left.get(i)[0] - u) < size && Math.abs(left.get(i)[1] - v) < size) {
                return i;
            }
        }
        return -1;
    }

    private static double[] joined(double[] first, double[] second) {
        double[] both = Arrays.copyOf(first, first.length + second.length - 2);
        System.arraycopy(second, 2, both, first.length, second.length - 2);
        return both;
    }
}
