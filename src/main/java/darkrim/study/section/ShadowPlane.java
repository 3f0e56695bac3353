package darkrim.study.section;

import darkrim.geom.Frame;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * The plane through an edge and a point of the pupil. For a point where it touches the rim it is the border of full shadow, or of full light, behind a
 * straight edge: all of the pupil lies to one side of it. In a section that border is a straight line, from where the plane meets the section in the plane of the
 * pupil.
 *
 * @param from the point of the pupil, where it seems to be, mm
 * @param trace where the plane meets the section and the plane of the pupil, where that seems to be, mm
 */
record ShadowPlane(Vector3D from, Vector3D trace) {
    /** The touching point moves by less than rounding after so many steps unless the pupil is seen nearly edge-on. */
    private static final int STEPS = 8;

    private static final double FLAT = 1e-12;

    /**
     * Through the middle of the pupil.
     *
     * @param at the edge where the section cuts it, mm
     * @param along which way the edge runs
     */
    static Optional<ShadowPlane> middle(Vector3D at, Vector3D along, SeemingPupil pupil, SectionPlane section) {
        Vector3D middle = pupil.middle();
        return trace(at, along, middle, pupil.frame(), section).map(trace -> new ShadowPlane(middle, trace));
    }

    /**
     * Through a point where it touches the rim: one of the two.
     *
     * @param at the edge where the section cuts it, mm
     * @param along which way the edge runs
     * @param sense 1 or -1, for one and the other
     */
    static Optional<ShadowPlane> touching(
            Vector3D at, Vector3D along, SeemingPupil pupil, SectionPlane section, double sense) {
        Frame frame = pupil.frame();
        Vector3D from = pupil.middle();
        for (int step = 0; step < STEPS; step++) {
            // The plane meets that of the pupil in a line; the rim is touched where it is farthest square to it.
            Vector3D line = along.cross(from.subtract(at)).cross(frame.normal());
            if (line.norm() < FLAT) {
                return Optional.empty();
            }
            Vector2D inPlane = Vector2D.of(line.dot(frame.u()), line.dot(frame.v()));
            from = pupil.rim(inPlane.orthogonal().multiply(sense));
        }
        Vector3D touching = from;
        return trace(at, along, touching, frame, section).map(trace -> new ShadowPlane(touching, trace));
    }

    /** The point in all three planes. */
    private static Optional<Vector3D> trace(
            Vector3D at, Vector3D along, Vector3D from, Frame pupil, SectionPlane section) {
        return trace(along.cross(from.subtract(at)), from, pupil.normal(), section);
    }

    /**
     * Where a plane meets the section at the height of a point.
     *
     * @param normal square to the plane, any length
     * @param from the point, in the plane, mm
     * @param upward square to the planes of one height
     */
    static Optional<Vector3D> trace(Vector3D normal, Vector3D from, Vector3D upward, SectionPlane section) {
        Vector3D line = normal.cross(upward);
        double closing = section.frame().normal().dot(line);
        if (Math.abs(closing) < FLAT * line.norm() || line.norm() == 0) {
            return Optional.empty();
        }
        return Optional.of(from.add(line.multiply(-section.frame().height(from) / closing)));
    }
}
