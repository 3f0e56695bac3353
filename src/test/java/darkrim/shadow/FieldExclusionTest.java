package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Scene;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines from a square of half side 2 at z = 10 to one of half side 1 at z = 0 that is moved aside. */
class FieldExclusionTest {
    private static final Tolerance TOLERANCE = Tolerance.of(20, 1e-6);

    private static FlatPiece square(double x, double y, double half, double z, boolean up) {
        Frame frame = Frame.about(Vector3D.of(x, y, z), up ? Vector3D.Unit.PLUS_Z : Vector3D.Unit.MINUS_Z);
        return FlatPiece.of(frame, new double[] {-half, -half, half, -half, half, half, -half, half});
    }

    private static Pair pair(double x, double y) {
        return new Pair(square(0, 0, 2, 10, false), square(x, y, 1, 0, true), 0, TOLERANCE);
    }

    private static FieldExclusion limit(Outline outline, double z, boolean up) {
        return new FieldExclusion(
                new FieldLimit(
                        outline, Frame.about(Vector3D.of(0, 0, z), up ? Vector3D.Unit.PLUS_Z : Vector3D.Unit.MINUS_Z)),
                TOLERANCE);
    }

    /** At z = 5 the lines cross within half side 1.5 of the middle between the centres, half of the way aside. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aRoundLimitExcludesWhatCrossesBesideItAndAdmitsWhatCrossesWithinIt(boolean up) {
        FieldExclusion disc = limit(Ring.disc(3), 5, up);
        for (double off : new double[] {-1e-6, 1e-6}) {
            // Beside it along x: x / 2 - 1.5 = 3 + off.
            double beside = 2 * (4.5 + off);
            assertThat(disc.excludes(pair(beside, 0).shaft())).isEqualTo(off > 0);
            assertThat(disc.excludes(pair(-beside, 0).shaft())).isEqualTo(off > 0);
            assertThat(disc.excludes(pair(0, beside).shaft())).isEqualTo(off > 0);
            // Toward a corner: the corner (1.5, 1.5) nearer by its own length.
            double corner = 2 * (1.5 + (3 + off) / Math.sqrt(2));
            assertThat(disc.excludes(pair(corner, corner).shaft())).isEqualTo(off > 0);
            assertThat(disc.excludes(pair(corner, -corner).shaft())).isEqualTo(off > 0);
            // Within it: the farthest corner at (x / 2 + 1.5, 1.5).
            double within = 2 * (Math.sqrt(9 - 2.25) - 1.5 + off);
            assertThat(disc.admits(pair(within, 0).shaft())).isEqualTo(off < 0);
            assertThat(disc.admits(pair(0, -within).shaft())).isEqualTo(off < 0);
        }
        assertThat(disc.excludes(pair(0, 0).shaft())).isFalse();
        assertThat(disc.admits(pair(0, 0).shaft())).isTrue();
        assertThat(disc.admits(pair(20, 0).shaft())).isFalse();
    }

    /** The crossings, 3 wide, hold all of a small limit or of a small hole, wherever these lie among them. */
    @Test
    void aLimitSmallerThanTheCrossingsIsNeitherExcludedNorItsHoleMissed() {
        for (double x = -2; x <= 2; x += 0.8) {
            for (double y = -2; y <= 2; y += 0.8) {
                Pair pair = pair(x, y);
                assertThat(limit(Ring.disc(0.2), 5, true).excludes(pair.shaft()))
                        .isFalse();
                assertThat(limit(Polygon.rectangle(0.2, 0.3), 5, true).excludes(pair.shaft()))
                        .isFalse();
                assertThat(limit(new Ring(6, 0.2), 5, true).admits(pair.shaft()))
                        .isFalse();
            }
        }
    }

    /** Without any part in the way a pair is lit in full if and only if all of its lines pass the limit. */
    @Test
    void aPairIsFullyLitOnlyWithinTheLimit() {
        for (double radius : new double[] {1, 2.1, 2.2, 9}) {
            FieldLimit limit =
                    new FieldLimit(Ring.disc(radius), Frame.about(Vector3D.of(0, 0, 5), Vector3D.Unit.PLUS_Z));
            Scene scene = new TestParts()
                    .sheet("far", 15, 16, 15, 16, 0)
                    .build(new Beam(
                            TestParts.pupilAt(10, Polygon.rectangle(4, 4)),
                            Optional.of(limit),
                            OptionalDouble.empty()));
            IsFullyLit lit = new IsFullyLit(
                    scene,
                    scene.corners(),
                    FacetEdges.of(scene),
                    TOLERANCE,
                    new BlockedLine(scene, TestParts.tree(scene), scene.corners(), TOLERANCE),
                    "");
            // The corner of the crossings lies at 1.5 sqrt 2 = 2.12.
            assertThat(lit.holds(pair(0, 0).shaft(), pair(0, 0), new int[0])).isEqualTo(radius > 2.15);
        }
    }

    @Test
    void theHoleOfARingExcludesWhatCrossesWithinItAndAdmitsNothingThatTouchesIt() {
        double corner = 1.5 * Math.sqrt(2);
        for (double off : new double[] {-1e-6, 1e-6}) {
            FieldExclusion ring = limit(new Ring(6, corner + off), 5, true);
            assertThat(ring.excludes(pair(0, 0).shaft())).isEqualTo(off > 0);
            assertThat(ring.admits(pair(0, 0).shaft())).isFalse();
            // Between hole and rim: the nearest side 1 + off from the middle.
            FieldExclusion around = limit(new Ring(6, 1), 5, true);
            assertThat(around.admits(pair(2 * (2.5 + off), 0).shaft())).isEqualTo(off > 0);
            assertThat(around.admits(pair(0, 2 * (2.5 + off)).shaft())).isEqualTo(off > 0);
            assertThat(around.excludes(pair(2 * (2.5 + off), 0).shaft())).isFalse();
        }
    }

    @Test
    void aRectangleExcludesWhatCrossesBesideItAndAdmitsWhatCrossesWithinIt() {
        for (boolean up : new boolean[] {true, false}) {
            FieldExclusion rectangle = limit(Polygon.rectangle(8, 8), 5, up);
            for (double off : new double[] {-1e-6, 1e-6}) {
                double beside = 2 * (5.5 + off);
                assertThat(rectangle.excludes(pair(beside, 1).shaft())).isEqualTo(off > 0);
                assertThat(rectangle.excludes(pair(-beside, 1).shaft())).isEqualTo(off > 0);
                assertThat(rectangle.excludes(pair(1, beside).shaft())).isEqualTo(off > 0);
                assertThat(rectangle.excludes(pair(1, -beside).shaft())).isEqualTo(off > 0);
                double within = 2 * (2.5 + off);
                assertThat(rectangle.admits(pair(within, 1).shaft())).isEqualTo(off < 0);
                assertThat(rectangle.admits(pair(-within, 1).shaft())).isEqualTo(off < 0);
                assertThat(rectangle.admits(pair(1, within).shaft())).isEqualTo(off < 0);
                assertThat(rectangle.admits(pair(1, -within).shaft())).isEqualTo(off < 0);
            }
        }
    }

    /** Rounding of a thousandth grows 2.4 times or more in the crossing: what is nearer to a limit than that is neither in nor out. */
    @Test
    void whatRoundingMayMoveAcrossALimitIsNotDecided() {
        Tolerance rough = new Tolerance(1e-3, 4e-3, 0.256);
        for (Outline outline : new Outline[] {Polygon.rectangle(8, 8), Ring.disc(4), new Ring(9, 4)}) {
            boolean hole = outline instanceof Ring ring && ring.hole() > 0;
            FieldExclusion limit = new FieldExclusion(
                    new FieldLimit(outline, Frame.about(Vector3D.of(0, 0, 5), Vector3D.Unit.PLUS_Z)), rough);
            for (double off : new double[] {1.5e-3, 0.05}) {
                Pair beside = pair(2 * (5.5 + off), 0);
                assertThat(hole ? limit.admits(beside.shaft()) : limit.excludes(beside.shaft()))
                        .isEqualTo(off > 0.01);
                // The far side of the crossings at 2.5 + 1.5 = 4, or at a corner of them.
                double far = outline instanceof Polygon ? 2.5 - off : Math.sqrt(16 - 2.25) - 1.5 - off;
                Pair within = pair(2 * far, 0);
                assertThat(hole ? limit.excludes(within.shaft()) : limit.admits(within.shaft()))
                        .isEqualTo(off > 0.01);
            }
        }
    }

    /** An L: all of the square of half side 4 but the quarter of positive x and y. */
    @Test
    void aLimitThatIsNotConvexIsJudgedByItsParts() {
        Polygon l = Polygon.of(List.of(
                Vector2D.of(-4, -4),
                Vector2D.of(4, -4),
                Vector2D.of(4, 0),
                Vector2D.of(0, 0),
                Vector2D.of(0, 4),
                Vector2D.of(-4, 4)));
        Frame frame = Frame.of(Vector3D.of(0, 0, 5), Vector3D.Unit.PLUS_X, Vector3D.Unit.PLUS_Y);
        FieldExclusion limit = new FieldExclusion(new FieldLimit(l, frame), TOLERANCE);
        assertThat(limit.excludes(pair(3.001, 3.001).shaft())).isTrue();
        assertThat(limit.excludes(pair(2.999, 3.001).shaft())).isFalse();
        assertThat(limit.excludes(pair(3.001, 2.999).shaft())).isFalse();
        assertThat(limit.excludes(pair(-5, -5).shaft())).isFalse();
        assertThat(limit.excludes(pair(11.001, -2).shaft())).isTrue();
        assertThat(limit.passesMiddle(pair(2, 2))).isFalse();
        assertThat(limit.passesMiddle(pair(2, -2))).isTrue();
    }

    /** Below the face, at z = -10, lines drawn out cross within half side 4 of twice the way aside. */
    @Test
    void aLimitBelowTheFaceIsMetByTheLinesDrawnOut() {
        FieldExclusion disc = limit(Ring.disc(3), -10, true);
        for (double off : new double[] {-1e-6, 1e-6}) {
            assertThat(disc.excludes(pair((7 + off) / 2, 0).shaft())).isEqualTo(off > 0);
            FieldExclusion wide = limit(Ring.disc(Math.sqrt(32) - off), -10, true);
            assertThat(wide.admits(pair(0, 0).shaft())).isEqualTo(off < 0);
        }
    }

    @Test
    void theMiddleLinePassesWhereItCrosses() {
        FieldExclusion disc = limit(Ring.disc(3), 5, true);
        assertThat(disc.passesMiddle(pair(5.999, 0))).isTrue();
        assertThat(disc.passesMiddle(pair(6.001, 0))).isFalse();
        assertThat(disc.passesMiddle(pair(0, -6.001))).isFalse();
        FieldExclusion low = limit(Ring.disc(3), 2, true);
        // 8 tenths of the way from the pupil to the face.
        assertThat(low.passesMiddle(pair(3.749, 0))).isTrue();
        assertThat(low.passesMiddle(pair(3.751, 0))).isFalse();
    }

    /** A limit in the plane x = 0 that all lines run along: none is judged. */
    @Test
    void linesAlongThePlaneOfALimitAreNotJudged() {
        Frame upright = Frame.about(Vector3D.of(0, 0, 5), Vector3D.Unit.PLUS_X);
        FieldExclusion limit = new FieldExclusion(new FieldLimit(Ring.disc(3), upright), TOLERANCE);
        assertThat(limit.excludes(pair(0, 0).shaft())).isFalse();
        assertThat(limit.admits(pair(0, 0).shaft())).isFalse();
        assertThat(limit.passesMiddle(pair(0, 0))).isTrue();
        assertThat(limit.aim(pair(0, 0), 1)).isEmpty();
    }

    /** The aim moves the crossing toward the outline: in front of the limit both ends move that way, beyond one of them it is against it. */
    @Test
    void theAimBringsTheCrossingNearerToTheOutlineOrAwayFromIt() {
        Outline[] outlines = {Ring.disc(1), Polygon.rectangle(2, 2)};
        for (Outline outline : outlines) {
            for (double z : new double[] {5, -5, 15}) {
                for (int sign = -1; sign <= 1; sign += 2) {
                    FieldExclusion limit = limit(outline, z, true);
                    Pair pair = pair(9, 4);
                    Question.Aim aim = limit.aim(pair, sign).orElseThrow();
                    for (int end = 0; end < 2; end++) {
                        Vector3D from = pair.pupil().middleInSpace();
                        Vector3D to = pair.face().middleInSpace();
                        Vector3D before = crossing(from, to, z);
                        Vector3D after = end == 0
                                ? crossing(from.add(aim.pupil().multiply(1e-3)), to, z)
                                : crossing(from, to.add(aim.face().multiply(1e-3)), z);
                        assertThat(sign * (before.norm() - after.norm())).isPositive();
                    }
                }
            }
        }
    }

    private static Vector3D crossing(Vector3D from, Vector3D to, double z) {
        Vector3D there = from.lerp(to, (from.getZ() - z) / (from.getZ() - to.getZ()));
        return Vector3D.of(there.getX(), there.getY(), 0);
    }

    @Test
    void fromWithinAHoleTheAimIsOutwardAndFromWithinARectangleItIsAwayFromTheNearestSide() {
        Question.Aim out = limit(new Ring(6, 4), 5, true).aim(pair(2, 0), 1).orElseThrow();
        assertThat(out.face().getX()).isPositive();
        assertThat(out.pupil().getX()).isPositive();
        Question.Aim in = limit(new Ring(6, 4), 5, true).aim(pair(11, 0), 1).orElseThrow();
        assertThat(in.face().getX()).isNegative();
        Question.Aim inside =
                limit(Polygon.rectangle(8, 8), 5, true).aim(pair(6, 1), 1).orElseThrow();
        // At (3, 0.5) the side x = 4 is nearest.
        assertThat(inside.face().getX()).isNegative();
        assertThat(Math.abs(inside.face().getY())).isLessThan(1e-12);
    }
}
