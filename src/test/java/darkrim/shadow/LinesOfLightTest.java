package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Scene;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Single lines from a square pupil of half side 2 at z = 10 to a face of half side 1 at z = 0. */
class LinesOfLightTest {
    private static final Beam BEAM = Beam.of(TestParts.pupilAt(10, Polygon.rectangle(4, 4)));

    private final TestParts parts = new TestParts();

    private static FlatPiece square(double half, double z, boolean up) {
        Frame frame = Frame.about(Vector3D.of(0, 0, z), up ? Vector3D.Unit.PLUS_Z : Vector3D.Unit.MINUS_Z);
        return FlatPiece.of(frame, new double[] {-half, -half, half, -half, half, half, -half, half});
    }

    private static final double[] START = {1, 1};

    private static Optional<WitnessRay> clear(Scene scene, double[] start, Vector3D end) {
        Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
        return new ClearLine(scene, TestParts.tree(scene), scene.corners(), tolerance)
                .between(start, new Face(square(1, 0, true), -1), end, "face");
    }

    private static Optional<WitnessRay> blocked(Scene scene, double[] start, Vector3D end) {
        Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
        return new BlockedLine(scene, TestParts.tree(scene), scene.corners(), tolerance)
                .between(start, new Face(square(1, 0, true), -1), end, "face");
    }

    /** From (1, 1 -> -1 in y, for the frame's v points that way) to the middle: at z = 5 half of the way. */
    @Test
    void aLineIsClearOrBlockedByTheEdgeThatItPasses() {
        Scene empty = parts.sheet("far", 50, 51, 50, 51, 5).build(BEAM);
        WitnessRay ray = clear(empty, START, Vector3D.ZERO).orElseThrow();
        assertThat(ray.from()).isEqualTo(Vector3D.of(1, -1, 10));
        assertThat(ray.to()).isEqualTo(Vector3D.ZERO);
        assertThat(ray.toSurface()).isEqualTo("face");
        assertThat(blocked(empty, START, Vector3D.ZERO)).isEmpty();
        for (double off : new double[] {-1e-5, 0, 1e-5}) {
            Scene scene = new TestParts().sheet("s", 0.5 + off, 9, -9, 9, 5).build(BEAM);
            assertThat(clear(scene, START, Vector3D.ZERO).isPresent()).isEqualTo(off > 0);
            assertThat(blocked(scene, START, Vector3D.ZERO).isPresent()).isEqualTo(off < 0);
        }
    }

    /** Straight down past the free edge of a sheet on either side: to the last bit in line with it nothing is sure. */
    @Test
    void aLineThatRunsThroughAnEdgeIsNeverClear() {
        Vector3D below = Vector3D.of(1, -1, 0);
        for (double off : new double[] {0, 1e-5}) {
            TestParts[] all = {
                new TestParts().sheet("s", 1 + off, 9, -9, 9, 5),
                new TestParts().sheet("s", -9, 1 - off, -9, 9, 5),
                new TestParts().sheet("s", -9, 9, -1 + off, 9, 5),
                new TestParts().sheet("s", -9, 9, -9, -1 - off, 5),
                new TestParts().block("s", 1 + off, 9, -9, 9, 3, 5),
                new TestParts().block("s", -9, 1 - off, -9, 9, 3, 5),
                new TestParts().block("s", -9, 9, -1 + off, 9, 3, 5),
                new TestParts().block("s", -9, 9, -9, -1 - off, 3, 5)
            };
            for (TestParts each : all) {
                assertThat(clear(each.build(BEAM), START, below).isPresent()).isEqualTo(off > 0);
            }
        }
    }

    @Test
    void aStartOutsideThePupilOrAnEndBehindItOrTheFaceIsNoLine() {
        Scene scene = new TestParts().sheet("s", -9, 9, -9, 9, 5).build(BEAM);
        assertThat(blocked(scene, new double[] {2.1, 0}, Vector3D.ZERO)).isEmpty();
        assertThat(blocked(scene, new double[] {1.9, 0}, Vector3D.ZERO)).isPresent();
        Scene empty = new TestParts().sheet("far", 50, 51, 50, 51, 5).build(BEAM);
        assertThat(clear(empty, new double[] {2.1, 0}, Vector3D.ZERO)).isEmpty();
        assertThat(clear(empty, new double[] {0, -1.9}, Vector3D.ZERO)).isPresent();
        // A face that is moved up beside the pupil, or behind it.
        assertThat(clear(empty, START, Vector3D.of(0, 0, 9.9))).isPresent();
        assertThat(clear(empty, START, Vector3D.of(0, 0, 10))).isEmpty();
        assertThat(clear(empty, START, Vector3D.of(0, 0, 10.1))).isEmpty();
    }

    /** A limit of radius 0.5 at z = 5, where the line crosses at a distance of 0.707, or 0.495. */
    @Test
    void aLineThatMissesTheFieldLimitIsNotClearButBlocked() {
        FieldLimit limit = new FieldLimit(Ring.disc(0.5), Frame.about(Vector3D.of(0, 0, 5), Vector3D.Unit.PLUS_Z));
        Beam beam = new Beam(BEAM.pupil(), Optional.of(limit), OptionalDouble.empty());
        Scene scene = new TestParts().sheet("far", 50, 51, 50, 51, 5).build(beam);
        double[] inner = {0.7, 0.7};
        assertThat(clear(scene, START, Vector3D.ZERO)).isEmpty();
        assertThat(blocked(scene, START, Vector3D.ZERO)).isPresent();
        assertThat(clear(scene, inner, Vector3D.ZERO)).isPresent();
        assertThat(blocked(scene, inner, Vector3D.ZERO)).isEmpty();
    }

    @Test
    void linesThatPassAnEdgeAreNamedAfterTheSurfacesThatMeetThere() {
        Scene scene = new TestParts()
                .block("b", 0.6, 3, -9, 9, 4, 5)
                .sheet("s", -9, -2, -9, 9, 6)
                .sheet("under", -1, 0.1, -9, 9, 0)
                .build(BEAM);
        Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
        LimitingEdge limiting = new LimitingEdge(scene, FacetEdges.of(scene), tolerance);
        Vector3D up = Vector3D.Unit.PLUS_Z;
        // At z = 5 it passes 0.1 from the upper edge, at z = 4 farther: x = z / 10.
        WitnessRay ray = new WitnessRay(Vector3D.of(1, 0, 10), Vector3D.ZERO, "under");
        assertThat(limiting.of(ray, up)).isEqualTo("b/+z, b/-x");
        WitnessRay lower = new WitnessRay(Vector3D.of(-1, 0, 10), Vector3D.of(1, 0, 0), "under");
        assertThat(limiting.of(lower, up)).isEqualTo("b/-x, b/-z");
        WitnessRay left = new WitnessRay(Vector3D.of(-2, 0, 10), Vector3D.of(-1, 0, 0), "under");
        assertThat(limiting.of(left, up)).isEqualTo("s");
        // Within a field limit whose rim is nearer than any edge.
        FieldLimit limit = new FieldLimit(Ring.disc(0.55), Frame.about(Vector3D.of(0, 0, 5), Vector3D.Unit.PLUS_Z));
        Scene limited = scene.under(new Beam(BEAM.pupil(), Optional.of(limit), OptionalDouble.empty()));
        assertThat(new LimitingEdge(limited, FacetEdges.of(limited), tolerance).of(ray, up))
                .isEqualTo("field limit");
        FieldLimit square =
                new FieldLimit(Polygon.rectangle(1.1, 8), Frame.about(Vector3D.of(0, 0, 5), Vector3D.Unit.PLUS_Z));
        Scene other = scene.under(new Beam(BEAM.pupil(), Optional.of(square), OptionalDouble.empty()));
        assertThat(new LimitingEdge(other, FacetEdges.of(other), tolerance).of(ray, up))
                .isEqualTo("field limit");
        FieldLimit wide =
                new FieldLimit(Polygon.rectangle(1.3, 8), Frame.about(Vector3D.of(0, 0, 5), Vector3D.Unit.PLUS_Z));
        Scene last = scene.under(new Beam(BEAM.pupil(), Optional.of(wide), OptionalDouble.empty()));
        assertThat(new LimitingEdge(last, FacetEdges.of(last), tolerance).of(ray, up))
                .isEqualTo("b/+z, b/-x");
        FieldLimit ring = new FieldLimit(new Ring(9, 0.45), Frame.about(Vector3D.of(0, 0, 5), Vector3D.Unit.PLUS_Z));
        Scene hole = scene.under(new Beam(BEAM.pupil(), Optional.of(ring), OptionalDouble.empty()));
        assertThat(new LimitingEdge(hole, FacetEdges.of(hole), tolerance).of(ray, up))
                .isEqualTo("field limit");
    }
}
