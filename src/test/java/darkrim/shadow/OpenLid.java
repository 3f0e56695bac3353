package darkrim.shadow;

import darkrim.assembly.Die;
import darkrim.assembly.Opening;
import darkrim.geom.Outline;
import darkrim.scene.Beam;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A lid from z = 20 to z = 21 with a square opening of half side 10. */
final class OpenLid {
    private OpenLid() {}

    static final double[] SQUARE = {-10, 10, -10, 10};
    static final double[][] WALL = {{21, 0}, {20, 0}};

    static List<Vector3D> loop(double[] o, double[] step) {
        double[] w = {o[0] - step[1], o[1] + step[1], o[2] - step[1], o[3] + step[1]};
        return List.of(
                Vector3D.of(w[0], w[2], step[0]),
                Vector3D.of(w[1], w[2], step[0]),
                Vector3D.of(w[1], w[3], step[0]),
                Vector3D.of(w[0], w[3], step[0]));
    }

    static Opening opening(double[]... steps) {
        int last = steps.length - 1;
        return new Opening(
                "lid/opening[0]",
                TestParts.NOWHERE,
                List.of("-y", "+x", "+y", "-x"),
                loop(SQUARE, steps[0]),
                loop(SQUARE, steps[0]),
                loop(SQUARE, steps[Math.min(1, last)]),
                loop(SQUARE, steps[last]));
    }

    static TestParts lid(double outer, double[]... steps) {
        return new TestParts().plate("lid", new double[] {-outer, outer, -outer, outer}, List.of(SQUARE), steps);
    }

    static Beam beam(Outline outline) {
        return Beam.of(TestParts.pupilAt(200, outline));
    }

    static Die die(double half) {
        List<Vector3D> active = List.of(
                Vector3D.of(-half, -half, 0),
                Vector3D.of(half, -half, 0),
                Vector3D.of(half, half, 0),
                Vector3D.of(-half, half, 0));
        return new Die("die", TestParts.NOWHERE, active, active, active);
    }
}
