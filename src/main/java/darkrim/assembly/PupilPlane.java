package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Placement;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.BeamSpec;
import darkrim.layout.BeamSpec.PupilSpec;
import java.util.List;
import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Where the pupil stands: its plane is turned about the layout's x axis, then about its y axis, and faces the focal plane.
 *
 * <p>The frame's u is the turned x axis. Its normal points toward the focal plane, so for a right-handed frame v must be the turned -y
 * axis; the outline, drawn with y upward, is mirrored to match.
 */
public final class PupilPlane {
    private PupilPlane() {}

    /** The plane, its normal toward the focal plane. */
    public static Frame frame(PupilSpec pupil) {
        Placement turn = Placement.NONE
                .thenTurned(Vector3D.Unit.PLUS_X, pupil.tiltAboutX())
                .thenTurned(Vector3D.Unit.PLUS_Y, pupil.tiltAboutY());
        return new Frame(
                pupil.centre(),
                turn.direction(Vector3D.Unit.PLUS_X),
                turn.direction(Vector3D.Unit.MINUS_Y),
                turn.direction(Vector3D.Unit.MINUS_Z));
    }

    /** The outline in the coordinates of {@link #frame}. */
    public static Outline outline(PupilSpec pupil) {
        if (pupil.outline() instanceof Polygon polygon) {
            return Polygon.of(polygon.corners().stream()
                    .map(corner -> Vector2D.of(corner.getX(), -corner.getY()))
                    .toList());
        }
        return pupil.outline();
    }

    /** Corners of a polygon around the pupil, in layout coordinates, mm. */
    static List<Vector3D> rim(PupilSpec pupil) {
        Frame frame = frame(pupil);
        List<Vector2D> corners =
                outline(pupil) instanceof Polygon polygon ? polygon.corners() : around((Ring) pupil.outline());
        return corners.stream()
                .map(corner -> frame.at(corner.getX(), corner.getY()))
                .toList();
    }

    private static List<Vector2D> around(Ring ring) {
        return RoundSides.forRadius(ring.radius()).around(ring.radius());
    }

    /** All of the pupil must lie above the focal plane and face it. */
    static void check(BeamSpec beam, Findings findings) {
        double lowest =
                rim(beam.pupil()).stream().mapToDouble(Vector3D::getZ).min().orElseThrow();
        if (!(lowest > 0)) {
            findings.error(
                    "pupil-below-focal-plane",
                    beam.place(),
                    String.format(
                            Locale.ROOT,
                            "the pupil reaches down to z = %.6g mm: all of it must lie above the focal plane, z = 0; lessen its tilt or"
                                    + " move it away",
                            lowest));
        } else if (!(frame(beam.pupil()).normal().getZ() < 0)) {
            findings.error(
                    "pupil-faces-away",
                    beam.place(),
                    "the pupil is tilted so far that it does not face the focal plane: tilt it by less than 90 deg");
        }
    }
}
