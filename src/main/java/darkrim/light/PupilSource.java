package darkrim.light;

import darkrim.geom.Outline;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Window;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The pupil and field limit as plain numbers for the hot code. Immutable. */
final class PupilSource {
    final Outline outline;
    final double area;
    final double cx;
    final double cy;
    final double cz;
    final double ux;
    final double uy;
    final double uz;
    final double vx;
    final double vy;
    final double vz;
    final double nx;
    final double ny;
    final double nz;
    /** Absent where there is none, for the same reason as the limit. */
    final Window window;

    /** Absent where the field is not limited; a null check in the hot code is cheaper than an Optional. */
    final FieldLimit fieldLimit;

    PupilSource(Beam beam) {
        outline = beam.pupil().outline();
        area = outline.area();
        Vector3D origin = beam.pupil().frame().origin();
        Vector3D u = beam.pupil().frame().u();
        Vector3D v = beam.pupil().frame().v();
        Vector3D normal = beam.pupil().frame().normal();
        cx = origin.getX();
        cy = origin.getY();
        cz = origin.getZ();
        ux = u.getX();
        uy = u.getY();
        uz = u.getZ();
        vx = v.getX();
        vy = v.getY();
        vz = v.getZ();
        nx = normal.getX();
        ny = normal.getY();
        nz = normal.getZ();
        window = beam.window().orElse(null);
        fieldLimit = beam.fieldLimit().orElse(null);
    }

    /**
     * For what follows light in straight lines to the pupil only.
     *
     * @throws IllegalArgumentException if the beam has a window
     */
    static PupilSource withoutWindow(Beam beam) {
        if (beam.window().isPresent()) {
            throw new IllegalArgumentException("light through a window is not followed here");
        }
        return new PupilSource(beam);
    }

    /** Height of a point in front of the pupil's plane, mm; the pupil shines on points of positive height only. */
    double height(double x, double y, double z) {
        return nx * (x - cx) + ny * (y - cy) + nz * (z - cz);
    }

    /** Whether the field limit lets light pass on a line. */
    boolean passes(double x, double y, double z, double dx, double dy, double dz) {
        return fieldLimit == null || fieldLimit.passes(x, y, z, dx, dy, dz);
    }

    /**
     * Whether points at a height are better sampled over the hemisphere than over the pupil: there the pupil fills so much of the sky that
     * a sample over its area could weigh more than 2 pi. Through a window no element of the pupil fills more of the sky than one that is nearer by
     * the window's thickness, as {@link Window#solidAngle} shows when what it adds for the plate is left out.
     */
    boolean fillsTheSky(double height) {
        double nearest = nearest(height);
        return area > 2 * Math.PI * nearest * nearest;
    }

    private double nearest(double height) {
        return window == null ? height : height - window.thickness();
    }

    /** No sample of direct irradiance at heights from {@code least} on is larger than this, sr. */
    double largestSample(double least) {
        double nearest = nearest(least);
        return nearest <= 0 || fillsTheSky(least) ? 2 * Math.PI : area / (nearest * nearest);
    }
}
