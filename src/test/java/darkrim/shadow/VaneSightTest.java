package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.reference.ReferenceCase;
import darkrim.reference.ReferenceCases;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Where the wall of a tube with vanes comes into sight, by bisection of the exact pupil, is where the reference cases say. */
class VaneSightTest {
    /** Where along the wall of a tube a disc beyond a round opening comes into sight; it is in sight at {@code from} and not at {@code to}. */
    private static double comesIntoSight(
            double wall, double disc, double discAt, double opening, double openingAt, double from, double to) {
        Pupil pupil = new Pupil(
                Ring.disc(disc),
                Frame.about(Vector3D.of(0, 0, discAt), Vector3D.of(0, 0, Math.signum(openingAt - discAt))));
        FieldLimit limit =
                new FieldLimit(Ring.disc(opening), Frame.about(Vector3D.of(0, 0, openingAt), Vector3D.Unit.PLUS_Z));
        Scene scene = new TestParts()
                .sheet("far", 1e4, 1e4 + 1, 0, 1, -1)
                .build(new Beam(pupil, Optional.of(limit), OptionalDouble.empty()));
        VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
        double seen = from;
        double hidden = to;
        while (Math.abs(seen - hidden) > 1e-8) {
            double middle = 0.5 * (seen + hidden);
            Vector3D point = Vector3D.of(wall, 0, middle);
            if (visible.from(point, Vector3D.Unit.MINUS_X).areaFraction() > 1e-14) {
                seen = middle;
            } else {
                hidden = middle;
            }
        }
        return seen;
    }

    @Test
    void theVanesOfTheReferenceCasesEndWallLightWhereTheSeenWallBegins() {
        for (ReferenceCase reference : ReferenceCases.beginning("H01")) {
            double wall = reference.parameter("Rw");
            double vane = reference.parameter("Rv");
            double length = reference.parameter("L");
            double firstLit = reference.parameter("firstLitWall");
            double[] seen = reference.parameters("firstSeenWallBehindEachVane");
            double[] vanes = reference.answers();
            for (int k = 0; k < vanes.length; k++) {
                double z = vanes[k];
                double lit = comesIntoSight(wall, reference.parameter("Re"), length, vane, z, firstLit - 60, z - 1e-3);
                assertThat(lit)
                        .as("%s vane %d", reference.id(), k)
                        .isCloseTo(k == 0 ? firstLit : seen[k - 1], within(2e-6));
                double far = comesIntoSight(wall, reference.parameter("rd"), 0, vane, z, 2 * length, z + 1e-3);
                // The last stretch is cut off at the entrance of the tube.
                assertThat(Math.min(far, length))
                        .as("%s vane %d", reference.id(), k)
                        .isCloseTo(seen[k], within(2e-6));
            }
        }
        for (ReferenceCase reference : ReferenceCases.beginning("H02")) {
            double[] vanes = reference.answers();
            for (int k = 0; k + 1 < vanes.length; k++) {
                double far = comesIntoSight(
                        reference.parameter("Rw"),
                        reference.parameter("rd"),
                        0,
                        reference.parameter("Rv"),
                        vanes[k],
                        3 * vanes[k],
                        vanes[k] + 1e-3);
                assertThat(far).as("%s vane %d", reference.id(), k).isCloseTo(vanes[k + 1], within(2e-6));
            }
        }
    }
}
