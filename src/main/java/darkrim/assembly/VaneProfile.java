package darkrim.assembly;

import darkrim.layout.Shape.Toward;
import darkrim.layout.VanesShape;
import darkrim.layout.VanesShape.Tip;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * The profile of one vane in the half plane (distance from the axis, height), from its root at the wall above, around the edge, to its root
 * below.
 *
 * <p>The edge is the point at which the vane is narrowest; the sides lie at fixed heights above and below it, moved down by tan(tilt) for each
 * mm outward. An edge of radius q toward the pupil is an arc about (q, 0) from the top at 90 deg by way of the edge at 180 deg to the bevel
 * at 180 deg + bevel; its corners lie on the arc, so the round is inside the true one.
 */
final class VaneProfile {
    /** Corners of an arc are at most this far apart, deg; more than the chord of a large radius asks for. */
    private static final double ARC_STEP = 15;

    private final VanesShape vanes;
    private final int number;
    private final List<Vector2D> corners = new ArrayList<>();
    private final List<String> faces = new ArrayList<>();

    private VaneProfile(VanesShape vanes, int number) {
        this.vanes = vanes;
        this.number = number;
    }

    /**
     * A vane.
     *
     * @param number its number, from 1 at the lowest
     */
    static VaneProfile of(VanesShape vanes, int number) {
        VaneProfile profile = new VaneProfile(vanes, number);
        profile.build();
        return profile;
    }

    /** The corners from the upper root to the lower one, mm. */
    List<Vector2D> corners() {
        return List.copyOf(corners);
    }

    /** Name of the face between each corner and the next, such as {@code 3/edge}; one fewer than corners. */
    List<String> faces() {
        return List.copyOf(faces);
    }

    private void build() {
        Tip tip = vanes.tip();
        boolean turned = tip.bevel() > 0 && tip.toward() == Toward.DETECTOR;
        List<Vector2D> outline = new ArrayList<>();
        List<String> kinds = new ArrayList<>();
        outline(outline, kinds);
        String upper = "top";
        String lower = "underside";
        if (turned) {
            Collections.reverse(outline);
            outline.replaceAll(point -> Vector2D.of(point.getX(), -point.getY()));
            Collections.reverse(kinds);
        }
        double z = vanes.heights().get(number - 1);
        double edge = vanes.edgeAt(z);
        double fall = StrictMath.tan(Math.toRadians(vanes.tilt()));
        corners.add(root(outline.get(0), z, edge, fall));
        for (Vector2D point : outline) {
            corners.add(Vector2D.of(edge + point.getX(), z + point.getY() - point.getX() * fall));
        }
        corners.add(root(outline.get(outline.size() - 1), z, edge, fall));
        faces.add(number + "/" + upper);
        kinds.forEach(kind -> faces.add(number + "/" + kind));
        faces.add(number + "/" + lower);
        requireRoots();
    }

    /** The corners from the end of the upper side to the beginning of the lower one, for an edge toward the pupil, about the edge. */
    private void outline(List<Vector2D> outline, List<String> kinds) {
        Tip tip = vanes.tip();
        double q = tip.radius();
        double bevel = Math.toRadians(tip.bevel());
        boolean square = tip.bevel() == 0;
        outline.add(Vector2D.of(q, q));
        if (q > 0) {
            arc(outline, kinds, 0, 90, 180);
            if (square) {
                straight(outline, kinds, Vector2D.of(0, -tip.land()), "edge");
                arc(outline, kinds, -tip.land(), 180, 270);
                return;
            }
            arc(outline, kinds, 0, 180, 180 + tip.bevel());
        } else {
            straight(outline, kinds, Vector2D.of(0, -tip.land()), "edge");
        }
        if (!square) {
            Vector2D from = outline.get(outline.size() - 1);
            double bottom = q - vanes.thickness();
            double outward = (from.getY() - bottom) * StrictMath.tan(bevel);
            straight(outline, kinds, Vector2D.of(from.getX() + outward, bottom), "bevel");
        }
    }

    private static void straight(List<Vector2D> outline, List<String> kinds, Vector2D to, String kind) {
        if (!outline.get(outline.size() - 1).equals(to)
                && to.getY() != outline.get(outline.size() - 1).getY()) {
            outline.add(to);
            kinds.add(kind);
        }
    }

    /** Corners on an arc about (radius, centre), without the first. */
    private void arc(List<Vector2D> outline, List<String> kinds, double centre, double from, double to) {
        double q = vanes.tip().radius();
        double chordStep = 2 * Math.toDegrees(StrictMath.acos(Math.max(0.5, 1 - vanes.chord() / q)));
        int steps = (int) Math.ceil((to - from) / Math.min(ARC_STEP, chordStep));
        for (int i = 1; i <= steps; i++) {
            double angle = Math.toRadians(from + (to - from) * i / steps);
            // The narrowest point is exact, and so are the ends of a square edge.
            double x = i == steps && to == 180 ? 0 : q + q * StrictMath.cos(angle);
            double y = i == steps && to == 180 ? centre : centre + q * StrictMath.sin(angle);
            outline.add(Vector2D.of(x, y));
            kinds.add("edge");
        }
    }

    /** Where the side through a point of the outline meets the wall. */
    private Vector2D root(Vector2D point, double z, double edge, double fall) {
        double widening = (vanes.wall().atTop() - vanes.wall().atBase()) / vanes.height();
        double level = z + point.getY();
        // wall(z) + widening (y - x fall) = edge + x
        double x = (vanes.wallAt(level) - edge) / (1 + widening * fall);
        return Vector2D.of(edge + x, level - x * fall);
    }

    private void requireRoots() {
        double top = vanes.base() + vanes.height();
        for (int i : new int[] {0, corners.size() - 1}) {
            Vector2D root = corners.get(i);
            Vector2D next = corners.get(i == 0 ? 1 : i - 1);
            if (!(root.getX() > next.getX())) {
                throw new IllegalArgumentException("the edge of its vane " + number
                        + " reaches the wall: give it more depth, less thickness or less bevel");
            }
            boolean within = root.getY() > vanes.base()
                    && (root.getY() < top
                            || (root.getY() == top && vanes.wallThickness().isEmpty()));
            if (!within) {
                throw new IllegalArgumentException(
                        "its vane " + number + " meets the wall at %.6g mm, outside its ends".formatted(root.getY()));
            }
        }
    }
}
