package darkrim.view.camera;

import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A box along the axes.
 *
 * @param low least coordinates, mm
 * @param high greatest coordinates, mm
 */
public record Box(Vector3D low, Vector3D high) {
    /**
     * The box around some points.
     *
     * @param coordinates three for each point, mm; at least one point
     */
    public static Box around(double[] coordinates) {
        double[] low = {coordinates[0], coordinates[1], coordinates[2]};
        double[] high = low.clone();
        for (int i = 3; i < coordinates.length; i++) {
            low[i % 3] = Math.min(low[i % 3], coordinates[i]);
            high[i % 3] = Math.max(high[i % 3], coordinates[i]);
        }
        return new Box(Vector3D.of(low), Vector3D.of(high));
    }

    /** The smallest box that holds this one and a point. */
    public Box with(Vector3D point) {
        return new Box(
                Vector3D.of(
                        Math.min(low.getX(), point.getX()),
                        Math.min(low.getY(), point.getY()),
                        Math.min(low.getZ(), point.getZ())),
                Vector3D.of(
                        Math.max(high.getX(), point.getX()),
                        Math.max(high.getY(), point.getY()),
                        Math.max(high.getZ(), point.getZ())));
    }

    /** The middle, mm. */
    public Vector3D centre() {
        return low.add(high).multiply(0.5);
    }

    /** Half the distance between opposite corners, mm. */
    public double radius() {
        return low.distance(high) / 2;
    }

    /** The eight corners, mm. */
    public List<Vector3D> corners() {
        return IntStream.range(0, 8)
                .mapToObj(i -> Vector3D.of(
                        (i & 1) == 0 ? low.getX() : high.getX(),
                        (i & 2) == 0 ? low.getY() : high.getY(),
                        (i & 4) == 0 ? low.getZ() : high.getZ()))
                .toList();
    }
}
