package darkrim.shadow;

import java.util.ArrayList;
import java.util.List;

/** Gathers the stretches and arcs of a rim and joins them to closed loops, for drawing. */
final class PieceOutline implements PupilView.Rim {
    private static final double NEAR = 1e-9;
    /** Longer arcs are cut, so that two ends and a radius say which arc is meant. */
    private static final double LONGEST_TURN = Math.PI / 2;

    private final List<RimStep> steps = new ArrayList<>();

    @Override
    public void straight(double u0, double v0, double u1, double v1) {
        steps.add(new RimStep(u0, v0, u1, v1, 0, 0));
    }

    @Override
    public void arc(Circle circle, double from, double to) {
        int parts = (int) Math.max(1, Math.ceil(Math.abs(to - from) / LONGEST_TURN));
        double turn = (to - from) / parts;
        for (int i = 0; i < parts; i++) {
            double start = from + i * turn;
            double end = i + 1 == parts ? to : from + (i + 1) * turn;
            steps.add(new RimStep(
                    circle.u() + circle.radius() * StrictMath.cos(start),
                    circle.v() + circle.radius() * StrictMath.sin(start),
                    circle.u() + circle.radius() * StrictMath.cos(end),
                    circle.v() + circle.radius() * StrictMath.sin(end),
                    circle.radius(),
                    turn));
        }
    }

    /** The loops; a chain that finds no next step is closed by a straight line. */
    List<List<RimStep>> loops() {
        List<List<RimStep>> loops = new ArrayList<>();
        List<RimStep> left = new ArrayList<>(steps);
        while (!left.isEmpty()) {
            List<RimStep> loop = new ArrayList<>();
            int next = left.size() - 1;
            while (next >= 0) {
                RimStep step = left.remove(next);
                loop.add(step);
                next = isAt(loop.get(0), step) ? -1 : following(left, step);
            }
            if (loop.size() > 1) {
                loops.add(loop);
            }
        }
        return loops;
    }

    private static int following(List<RimStep> left, RimStep step) {
        for (int i = 0; i < left.size(); i++) {
            if (isAt(left.get(i), step)) {
                return i;
            }
        }
        return -1;
    }

    /** Whether a step starts where another ends. */
    private static boolean isAt(RimStep next, RimStep step) {
        double size = NEAR * (1 + Math.abs(step.toU()) + Math.abs(step.toV()));
        return Math.abs(next.fromU() - step.toU()) < size && Math.abs(next.fromV() - step.toV()) < size;
    }
}
