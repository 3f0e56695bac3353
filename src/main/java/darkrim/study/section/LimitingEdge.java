package darkrim.study.section;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * An edge past which light comes, as the section cuts it.
 *
 * @param name what it is the edge of: an opening, or a body
 * @param side name of the side of the opening, such as {@code -y}; empty for others
 * @param profile where the section cuts it, from the pupil's side to the detectors', mm: more than one point where the edge has a land or bevels
 * @param open a point on the side where light passes, mm
 * @param along which way the edge runs in space where it is cut, unit length
 */
public record LimitingEdge(String name, String side, List<Vector2D> profile, Vector2D open, Vector3D along) {
    /** Copies the list. */
    public LimitingEdge {
        profile = List.copyOf(profile);
    }

    /** Name and side. */
    public String words() {
        return side.isEmpty() ? name : name + " " + side;
    }

    /** The narrowest point of the profile: the farthest toward the open side, mm; of several the one nearest the pupil. */
    public Vector2D narrowest() {
        Vector2D best = profile.get(0);
        double toward = Math.signum(open.getX() - best.getX());
        for (Vector2D point : profile) {
            if ((point.getX() - best.getX()) * toward > 0) {
                best = point;
            }
        }
        return best;
    }

    /** The point of the profile that a ray from a point touches when it passes all of them on the open side as nearly as it can. */
    Vector2D touched(Vector2D from) {
        double sense = Math.signum(way(from, profile.get(0)).signedArea(way(from, open)));
        Vector2D best = profile.get(0);
        for (Vector2D point : profile) {
            if (sense * way(from, best).signedArea(way(from, point)) > 0) {
                best = point;
            }
        }
        return best;
    }

    private static Vector2D way(Vector2D from, Vector2D to) {
        return to.subtract(from);
    }
}
