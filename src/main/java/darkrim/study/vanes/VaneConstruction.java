package darkrim.study.vanes;

import java.util.ArrayList;
import java.util.List;

/**
 * The textbook construction of vanes by alternate lines, for thin vanes (source: chapter on the control of stray light, Handbook of Optics,
 * OSA / McGraw-Hill, chapter from memory; the lines for cones derived here).
 *
 * <p>In the half plane (height z, distance r from the axis), with w(z) the wall, e(z) the edges, the detector from -d to d at z = 0 and the
 * entrance from -g to g at z = L:
 *
 * <ol>
 *   <li>Below P the wall gets no light at or beyond the angle a, where w(P) + g = (L - P) tan a: the farthest that a point of the wall is from a
 *       point of the entrance, across the axis.
 *   <li>A vane goes where the line from the wall at P to the far edge of the entrance, (-g, L), meets e(z): it shades the wall from P up to itself.
 *   <li>The line from the far edge of the detector, (-d, 0), over that edge meets the wall at the next P: up to there the vane hides it.
 * </ol>
 *
 * <p>All lines are straight, so each meeting point is a quotient. The lines in this plane are the limits in space as well: the light to a point of
 * the wall crosses the plane of a vane in a circle, the image of the entrance, that touches the edge's circle from outside exactly at the line;
 * likewise for the detector. Between P and the vane the limit moves one way, since it is a quotient of linear functions of the point's height.
 *
 * @param firstLit height above which the wall may be lit, mm
 * @param heights heights of the edges, ascending, mm
 * @param hiddenUpTo height up to which each vane hides the wall from the detector, mm; infinite where no line meets the wall
 */
public record VaneConstruction(double firstLit, List<Double> heights, List<Double> hiddenUpTo) {
    /** More vanes than this are taken for a slip of the pen. */
    public static final int MOST = 200;

    /** Copies the lists. */
    public VaneConstruction {
        heights = List.copyOf(heights);
        hiddenUpTo = List.copyOf(hiddenUpTo);
    }

    /**
     * The vanes for a task.
     *
     * @return as many as are needed, at most {@link #MOST} + 1, which is too many
     */
    public static VaneConstruction of(VaneTask task) {
        List<Double> heights = new ArrayList<>();
        List<Double> hidden = new ArrayList<>();
        double firstLit = task.first().isPresent() ? task.first().getAsDouble() : firstLit(task);
        double reached = firstLit;
        while (reached < task.entranceHeight() && heights.size() <= MOST) {
            boolean given = task.first().isPresent();
            double vane = given ? reached : shadingVane(task, reached);
            heights.add(vane);
            reached = hiddenUpTo(task, vane);
            hidden.add(reached);
        }
        return new VaneConstruction(firstLit, heights, hidden);
    }

    /** Height above which the wall may be lit at or beyond the angle; the entrance's height where none of it is. */
    private static double firstLit(VaneTask task) {
        double tangent = StrictMath.tan(Math.toRadians(task.offAxis().orElseThrow()));
        double growth = tangent + task.slope(task.wall());
        double across = task.wallAt(0) + task.entranceRadius() + 2 * task.clearance();
        if (!(growth > 0)) {
            // A cone that closes faster than the light leans: its farthest points are lit first.
            return task.base();
        }
        double lit = (task.entranceHeight() * tangent - across) / growth;
        return Math.min(task.entranceHeight(), Math.max(task.base(), lit));
    }

    /** Where the line from the wall at a height to the far edge of the entrance meets the line of the edges. */
    private static double shadingVane(VaneTask task, double from) {
        double wall = task.wallAt(from);
        double fall = -(task.entranceRadius() + task.clearance() + wall) / (task.entranceHeight() - from);
        double rise = task.slope(task.edge());
        double edge = task.edgeAt(from) + task.clearance();
        return from + (wall - edge) / (rise - fall);
    }

    /** Where the line from the far edge of the detector over an edge meets the wall. */
    private static double hiddenUpTo(VaneTask task, double vane) {
        double detector = task.detectorRadius() + task.clearance();
        double rise = (task.edgeAt(vane) + task.clearance() + detector) / vane;
        double growth = rise - task.slope(task.wall());
        return growth > 0 ? (task.wallAt(0) + detector) / growth : Double.POSITIVE_INFINITY;
    }
}
