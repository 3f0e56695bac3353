package darkrim.geom;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.joml.Matrix4x3d;
import org.joml.Matrix4x3dc;
import org.joml.Vector3d;

/** Where a part stands: turned, mirrored, moved. Immutable; lengths in mm, angles in degrees. */
public final class Placement {
    /** The part stays where it is. */
    public static final Placement NONE = new Placement(new Matrix4x3d());

    private final Matrix4x3dc matrix;

    private Placement(Matrix4x3dc matrix) {
        this.matrix = matrix;
    }

    /** Moved by a vector, mm, after all that this placement already does. */
    public Placement thenMoved(Vector3D by) {
        return new Placement(
                new Matrix4x3d().translation(by.getX(), by.getY(), by.getZ()).mul(matrix));
    }

    /**
     * Turned about an axis through the origin, after all that this placement already does.
     *
     * @param axis the axis, any length but 0
     * @param degrees angle, degrees, right-handed about the axis
     */
    public Placement thenTurned(Vector3D axis, double degrees) {
        Vector3D unit = axis.normalize();
        Matrix4x3d turn = new Matrix4x3d().rotation(Math.toRadians(degrees), unit.getX(), unit.getY(), unit.getZ());
        snapQuarterTurns(turn, degrees);
        return new Placement(turn.mul(matrix));
    }

    /** Mirrored at the plane through the origin that is square to an axis, after all that this placement already does. */
    public Placement thenMirrored(Vector3D axis) {
        Vector3D unit = axis.normalize();
        return new Placement(new Matrix4x3d()
                .reflection(unit.getX(), unit.getY(), unit.getZ(), 0, 0, 0)
                .mul(matrix));
    }

    /** This placement first, then another. */
    public Placement then(Placement next) {
        return new Placement(new Matrix4x3d(next.matrix).mul(matrix));
    }

    /** The placed point, mm. */
    public Vector3D point(Vector3D point) {
        Vector3d moved = matrix.transformPosition(new Vector3d(point.getX(), point.getY(), point.getZ()));
        return Vector3D.of(moved.x, moved.y, moved.z);
    }

    /** The turned direction. */
    public Vector3D direction(Vector3D direction) {
        Vector3d moved = matrix.transformDirection(new Vector3d(direction.getX(), direction.getY(), direction.getZ()));
        return Vector3D.of(moved.x, moved.y, moved.z);
    }

    /** Whether left and right are exchanged, so that facets must be wound the other way round. */
    public boolean mirrors() {
        return matrix.determinant() < 0;
    }

    /** Quarter turns about an axis of the layout stay exact: 6e-17 instead of 0 would tilt a face that is meant to be flat. */
    private static void snapQuarterTurns(Matrix4x3d turn, double degrees) {
        if (degrees % 90 != 0) {
            return;
        }
        double[] entries = turn.get(new double[12]);
        for (int i = 0; i < 9; i++) {
            double whole = Math.rint(entries[i]);
            if (Math.abs(entries[i] - whole) < 1e-15) {
                entries[i] = whole;
            }
        }
        turn.set(entries);
    }
}
