package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Whether light takes a straight line from the pupil to a point of a face. The tree answers first, as it does for the sampled light; a line
 * that it finds clear counts only if no facet on the way comes so near that rounding could hide it. One thread each.
 */
final class ClearLine {
    private final Scene scene;
    private final FacetTree tree;
    private final double[] corners;
    private final Tolerance tolerance;
    private final Ray ray = new Ray();

    /** @param corners nine coordinates a facet; not changed */
    ClearLine(Scene scene, FacetTree tree, double[] corners, Tolerance tolerance) {
        this.scene = scene;
        this.tree = tree;
        this.corners = corners;
        this.tolerance = tolerance;
    }

    /**
     * The line, if light takes it.
     *
     * @param pupilPoint in the plane of the pupil, mm
     * @param face the face
     * @param to end of the line, mm: a point of the face, or of the face moved aside
     * @param surface name of the surface
     */
    Optional<WitnessRay> between(double[] pupilPoint, Face face, Vector3D to, String surface) {
        Beam beam = scene.covering();
        if (!beam.pupil().outline().contains(pupilPoint[0], pupilPoint[1])) {
            return Optional.empty();
        }
        Vector3D from = beam.pupil().frame().at(pupilPoint[0], pupilPoint[1]);
        Vector3D way = from.subtract(to);
        if (scene.beam().window().isPresent() && !scene.beam().surelyShines(to, way)) {
            return Optional.empty();
        }
        Frame own = face.piece().frame();
        // A point beside the plane of the face stands for the face moved there.
        Frame seen = Math.abs(own.height(to)) <= tolerance.flat() ? own : new Frame(to, own.u(), own.v(), own.normal());
        boolean moved = !seen.equals(own);
        if (!(seen.height(from) > tolerance.gap() && beam.pupil().frame().height(to) > tolerance.gap())) {
            return Optional.empty();
        }
        boolean inField = beam.fieldLimit()
                .map(limit -> limit.passes(to.getX(), to.getY(), to.getZ(), way.getX(), way.getY(), way.getZ()))
                .orElse(true);
        if (!inField) {
            return Optional.empty();
        }
        ray.set(to, way, 1 - 1e-12, moved ? Ray.NO_PLANE : face.plane());
        if (tree.blocked(ray) || !isSurelyClear(from, to, seen)) {
            return Optional.empty();
        }
        return Optional.of(new WitnessRay(from, to, surface));
    }

    private boolean isSurelyClear(Vector3D from, Vector3D to, Frame face) {
        double[] start = {from.getX(), from.getY(), from.getZ()};
        double[] end = {to.getX(), to.getY(), to.getZ()};
        Frame pupil = scene.covering().pupil().frame();
        boolean[] clear = {true};
        tree.passing(
                (box, at) -> clear[0] && mayMeet(start, end, box, at),
                f -> clear[0] = clear[0]
                        && (isBehind(pupil, f)
                                || isBehind(face, f)
                                || Crossing.of(start, end, corners, 9 * f) == Crossing.NO));
        return clear[0];
    }

    /** In the plane or behind it: no line in front of the plane can meet it. */
    private boolean isBehind(Frame frame, int f) {
        for (int k = 0; k < 3; k++) {
            if (Pair.height(frame, corners, 9 * f + 3 * k) > tolerance.flat()) {
                return false;
            }
        }
        return true;
    }

    private boolean mayMeet(double[] start, double[] end, double[] box, int at) {
        double low = 0;
        double high = 1;
        for (int k = 0; k < 3; k++) {
            double way = end[k] - start[k];
            double from = box[at + k] - tolerance.gap() - start[k];
            double to = box[at + 3 + k] + tolerance.gap() - start[k];
            if (Math.abs(way) < tolerance.gap()) {
                if (from > tolerance.gap() || to < -tolerance.gap()) {
                    return false;
                }
            } else {
                double a = from / way;
                double b = to / way;
                low = Math.max(low, Math.min(a, b) - 1e-12);
                high = Math.min(high, Math.max(a, b) + 1e-12);
            }
        }
        return low <= high;
    }
}
