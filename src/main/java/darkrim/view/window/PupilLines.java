package darkrim.view.window;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Pupil;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The outline of the pupil as lines in space. */
final class PupilLines {
    private static final int SIDES = 96;

    private PupilLines() {}

    /** Six coordinates a line, mm. */
    static double[] of(Pupil pupil) {
        Outline outline = pupil.outline();
        if (outline instanceof Ring ring) {
            double[] outer = circle(pupil.frame(), ring.radius());
            return ring.hole() > 0 ? CutFaces.joined(List.of(outer, circle(pupil.frame(), ring.hole()))) : outer;
        }
        return closed(((Polygon) outline)
                .corners().stream()
                        .map(corner -> pupil.frame().at(corner.getX(), corner.getY()))
                        .toList());
    }

    private static double[] circle(Frame frame, double radius) {
        List<Vector3D> corners = new ArrayList<>();
        for (int i = 0; i < SIDES; i++) {
            double angle = 2 * Math.PI * i / SIDES;
            corners.add(frame.at(radius * StrictMath.cos(angle), radius * StrictMath.sin(angle)));
        }
        return closed(corners);
    }

    private static double[] closed(List<Vector3D> corners) {
        double[] lines = new double[6 * corners.size()];
        for (int i = 0; i < corners.size(); i++) {
            put(lines, 6 * i, corners.get(i));
            put(lines, 6 * i + 3, corners.get((i + 1) % corners.size()));
        }
        return lines;
    }

    static void put(double[] lines, int at, Vector3D point) {
        lines[at] = point.getX();
        lines[at + 1] = point.getY();
        lines[at + 2] = point.getZ();
    }
}
