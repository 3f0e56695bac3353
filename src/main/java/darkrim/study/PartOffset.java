package darkrim.study;

import darkrim.geom.Placement;
import java.io.Serializable;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * How far a part is from its place: turned about x, then y, then z through its own origin, then shifted. All along the axes of the layout.
 *
 * @param shift along x, y and z, mm
 * @param tilt about x, y and z, degrees, right-handed
 */
public record PartOffset(Vector3D shift, Vector3D tilt) implements Serializable {
    /** It is in its place. */
    public static final PartOffset NONE = new PartOffset(Vector3D.ZERO, Vector3D.ZERO);

    /** The placement of a part that is out of place by this. */
    Placement of(Placement drawn) {
        if (tilt.equals(Vector3D.ZERO)) {
            return shift.equals(Vector3D.ZERO) ? drawn : drawn.thenMoved(shift);
        }
        Vector3D origin = drawn.point(Vector3D.ZERO);
        return drawn.thenMoved(origin.negate())
                .thenTurned(Vector3D.Unit.PLUS_X, tilt.getX())
                .thenTurned(Vector3D.Unit.PLUS_Y, tilt.getY())
                .thenTurned(Vector3D.Unit.PLUS_Z, tilt.getZ())
                .thenMoved(origin.add(shift));
    }

    /** Vectors of the library do not travel by themselves: their components do. */
    private Object writeReplace() {
        return new Sent(shift.getX(), shift.getY(), shift.getZ(), tilt.getX(), tilt.getY(), tilt.getZ());
    }

    private record Sent(double x, double y, double z, double aboutX, double aboutY, double aboutZ)
            implements Serializable {
        private Object readResolve() {
            return new PartOffset(Vector3D.of(x, y, z), Vector3D.of(aboutX, aboutY, aboutZ));
        }
    }
}
