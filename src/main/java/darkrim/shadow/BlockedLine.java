package darkrim.shadow;

import darkrim.scene.Beam;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Whether a straight line from the pupil to a point of a face is surely blocked: it runs through the inside of a facet on the way, beyond
 * all rounding, or misses the field limit. One thread each.
 */
final class BlockedLine {
    private final Scene scene;
    private final FacetTree tree;
    private final double[] corners;
    private final Tolerance tolerance;
    private final Ray ray = new Ray();

    /** @param corners nine coordinates a facet; not changed */
    BlockedLine(Scene scene, FacetTree tree, double[] corners, Tolerance tolerance) {
        this.scene = scene;
        this.tree = tree;
        this.corners = corners;
        this.tolerance = tolerance;
    }

    /** The line, if it is blocked; a start outside the pupil or behind the face counts as not blocked. */
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
        if (!(face.piece().frame().height(from) > tolerance.gap())) {
            return Optional.empty();
        }
        boolean inField = beam.fieldLimit()
                .map(limit -> limit.passes(to.getX(), to.getY(), to.getZ(), way.getX(), way.getY(), way.getZ()))
                .orElse(true);
        if (inField) {
            ray.set(to, way, 1 - 1e-12, face.plane());
            int facet = tree.nearest(ray);
            if (facet < 0) {
                return Optional.empty();
            }
            double[] start = {from.getX(), from.getY(), from.getZ()};
            double[] end = {to.getX(), to.getY(), to.getZ()};
            if (Crossing.of(start, end, corners, 9 * facet) != Crossing.YES) {
                return Optional.empty();
            }
        }
        return Optional.of(new WitnessRay(from, to, surface));
    }
}
