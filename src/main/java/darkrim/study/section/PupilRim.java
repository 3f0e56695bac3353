package darkrim.study.section;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Pupil;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Finds the points of the rim of the pupil that are farthest to the left and to the right in a section. Exact: the support of the outline. */
final class PupilRim {
    private PupilRim() {}

    static LayoutSection.Rim of(Pupil pupil, SectionPlane plane) {
        Vector3D right = plane.frame().u();
        // The farthest point of an outline in a direction is the farthest along the direction's part in the outline's
        // own plane.
        Vector2D toward = Vector2D.of(
                right.dot(pupil.frame().u()), right.dot(pupil.frame().v()));
        return new LayoutSection.Rim(point(pupil, toward.negate()), point(pupil, toward));
    }

    /** The point of the rim farthest in a direction of the pupil's own plane, mm. */
    static Vector3D point(Pupil pupil, Vector2D toward) {
        Vector2D best = farthest(pupil.outline(), toward);
        return pupil.frame().at(best.getX(), best.getY());
    }

    private static Vector2D farthest(Outline outline, Vector2D toward) {
        if (outline instanceof Ring ring) {
            return toward.norm() > 0 ? toward.normalize().multiply(ring.radius()) : Vector2D.ZERO;
        }
        Vector2D best = Vector2D.ZERO;
        double most = Double.NEGATIVE_INFINITY;
        List<Vector2D> alike = new ArrayList<>();
        double doubt = 1e-12 * outline.reach();
        for (Vector2D corner : ((Polygon) outline).corners()) {
            double level = corner.dot(toward);
            if (level > most + doubt) {
                most = level;
                alike.clear();
            }
            if (level >= most - doubt) {
                alike.add(corner);
            }
        }
        for (Vector2D corner : alike) {
            best = best.add(corner);
        }
        // Of a side that is square to the section the middle is as good as its ends, and lies nearer to the section.
        return best.multiply(1.0 / alike.size());
    }
}
