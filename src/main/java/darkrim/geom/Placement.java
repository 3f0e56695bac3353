package darkrim.geom;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.joml.Matrix4x3d;
import org.joml.Matrix4x3dc;
import org.joml.Vector3d;

/** Where a part stands: turned, mirrored, moved, and scaled as it contracts. Immutable; lengths in mm, angles in degrees. */
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
        return new Placement(turn(unit, degrees).mul(matrix));
    }

    /** Mirrored at the plane through the origin that is square to an axis, after all that this placement already does. */
    public Placement thenMirrored(Vector3D axis) {
        Vector3D unit = axis.normalize();
        return new Placement(new Matrix4x3d()
                .reflection(unit.getX(), unit.getY(), unit.getZ(), 0, 0, 0)
                .mul(matrix));
    }

    /**
     * Made smaller or larger alike in all directions, after all that this placement already does.
     *
     * @param scale new length over old length, above 0
     * @param from the point about which it is scaled, mm
     * @param to where that point goes, mm
     */
    public Placement thenScaled(double scale, Vector3D from, Vector3D to) {
        Vector3D rest = to.subtract(from.multiply(scale));
        return new Placement(new Matrix4x3d()
                .translation(rest.getX(), rest.getY(), rest.getZ())
                .scale(scale)
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

    /**
     * Rodrigues' formula. JOML's own rotation takes the cosine from the sine, which loses half the digits near a quarter turn.
     * Quarter turns are exact: 6e-17 instead of 0 would tilt a face that is meant to be flat.
     */
    private static Matrix4x3d turn(Vector3D axis, double degrees) {
        double within = Math.IEEEremainder(degrees, 360);
        double sine = within % 180 == 0 ? 0 : StrictMath.sin(Math.toRadians(within));
        double cosine = Math.abs(within) == 90 ? 0 : StrictMath.cos(Math.toRadians(within));
        double rest = 1 - cosine;
        double x = axis.getX();
        double y = axis.getY();
        double z = axis.getZ();
        return new Matrix4x3d()
                .setColumn(0, new Vector3d(cosine + rest * x * x, rest * x * y + sine * z, rest * x * z - sine * y))
                .setColumn(1, new Vector3d(rest * x * y - sine * z, cosine + rest * y * y, rest * y * z + sine * x))
                .setColumn(2, new Vector3d(rest * x * z + sine * y, rest * y * z - sine * x, cosine + rest * z * z));
    }
}
