package darkrim.view.look;

import java.util.List;
import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A ruler between two picked points.
 *
 * @param points none, one or both of them, mm
 */
public record Ruler(List<Vector3D> points) {
    /** Nothing picked yet. */
    public static final Ruler EMPTY = new Ruler(List.of());

    /** Copies the list. */
    public Ruler {
        points = List.copyOf(points);
    }

    /** With a further point; a third begins anew. */
    public Ruler with(Vector3D point) {
        return points.size() == 1 ? new Ruler(List.of(points.get(0), point)) : new Ruler(List.of(point));
    }

    /** Whether both points are picked. */
    public boolean isWhole() {
        return points.size() == 2;
    }

    /** The distance and its components, such as {@code 12.300 mm (dx 12.300, dy 0.000, dz 0.000)}. */
    public String words() {
        Vector3D between = points.get(1).subtract(points.get(0));
        return String.format(
                Locale.ROOT,
                "%.3f mm  (dx %.3f, dy %.3f, dz %.3f)",
                between.norm(),
                between.getX() + 0.0,
                between.getY() + 0.0,
                between.getZ() + 0.0);
    }
}
