package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.scene.Window;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What stands on a surface, what reaches to the pupil, and what is seen through a window. */
class SolidsAndPiecesTest {
    private static final Beam HIGH = Beam.of(TestParts.pupilAt(200, Ring.disc(20)));

    /**
     * A block that reaches to the pupil, or through it, is left by lines only beyond: its front hides what lies behind. Along each axis and back,
     * since the sign of a coordinate must not matter.
     */
    @Test
    void aSolidThatReachesThroughThePupilHidesIt() {
        for (int axis = 0; axis < 3; axis++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                double[] way = new double[3];
                way[axis] = sign;
                Vector3D out = Vector3D.of(way[0], way[1], way[2]);
                Pupil pupil = new Pupil(Ring.disc(10), Frame.about(out.multiply(100), out.negate()));
                for (double end : new double[] {90, 100, 130}) {
                    double[] low = {-80, -80, -80};
                    double[] high = {80, 80, 80};
                    low[axis] = sign > 0 ? 50 : -end;
                    high[axis] = sign > 0 ? end : -50;
                    Scene scene = new TestParts()
                            .block("b", low[0], high[0], low[1], high[1], low[2], high[2])
                            .build(Beam.of(pupil));
                    VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
                    assertThat(visible.from(Vector3D.ZERO, out).areaFraction()).isZero();
                    assertThat(visible.from(Vector3D.ZERO, out).isNone()).isTrue();
                }
                // Half of it: the block covers one side of the axis.
                double[] low = {-80, -80, -80};
                double[] high = {80, 80, 80};
                low[axis] = sign > 0 ? 50 : -130;
                high[axis] = sign > 0 ? 130 : -50;
                low[(axis + 1) % 3] = 0;
                Scene half = new TestParts()
                        .block("b", low[0], high[0], low[1], high[1], low[2], high[2])
                        .build(Beam.of(pupil));
                assertThat(new VisiblePupil(half, TestParts.tree(half))
                                .from(Vector3D.ZERO, out)
                                .areaFraction())
                        .isCloseTo(0.5, within(1e-12));
            }
        }
    }

    private static FacePieces pieces(Scene scene, String name) {
        Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
        List<Face> faces = new FaceMerge(scene, scene.surface(name).orElseThrow(), tolerance).pieces();
        return new FacePieces(
                scene, TestParts.tree(scene), scene.corners(), FacetEdges.of(scene), faces, tolerance, () -> false);
    }

    private static double area(List<Face> faces) {
        return faces.stream().mapToDouble(face -> face.piece().area()).sum();
    }

    /** A block of 3 by 2 turned on a sheet of 10 by 10: 6 are in contact, 94 are open. */
    @ParameterizedTest
    @CsvSource({"0, 0, 6", "17, 0, 6", "-71, 0, 6", "0, 5, 3", "0, -5, 3", "45, 20, 0"})
    void whatLiesUnderABlockIsInContact(double turn, double aside, double contact) {
        QuaternionRotation by = QuaternionRotation.fromAxisAngle(Vector3D.Unit.PLUS_Z, Math.toRadians(turn));
        Scene scene = new TestParts()
                .sheet("s", -5, 5, -5, 5, 0)
                .placed(point -> by.apply(point).add(Vector3D.of(aside, 0.3, 0)))
                .block("b", -1.5, 1.5, -1, 1, 0, 1)
                .build(HIGH);
        FacePieces pieces = pieces(scene, "s");
        assertThat(pieces.contactArea()).isCloseTo(contact, within(1e-9));
        assertThat(area(pieces.open())).isCloseTo(100 - contact, within(1e-9));
        assertThat(area(pieces.all())).isCloseTo(100, within(1e-9));
        // No piece is under the block and beside it.
        for (Face face : pieces.all()) {
            assertThat(face.piece().area()).isPositive();
        }
    }

    @Test
    void whatStandsOffLiesBelowOrHoldsThePupilIsNotInContact() {
        double[] bottoms = {1e-3, -1};
        for (double bottom : bottoms) {
            Scene scene = new TestParts()
                    .sheet("s", -5, 5, -5, 5, 0)
                    .block("b", -1.5, 1.5, -1, 1, bottom, bottom + 1)
                    .build(HIGH);
            assertThat(pieces(scene, "s").contactArea()).isZero();
        }
        Scene tall = new TestParts()
                .sheet("s", -5, 5, -5, 5, 0)
                .block("b", -1.5, 1.5, -1, 1, 0, 230)
                .build(HIGH);
        assertThat(pieces(tall, "s").contactArea()).isZero();
        // A sheet is no solid.
        Scene sheets = new TestParts()
                .sheet("s", -5, 5, -5, 5, 0)
                .sheet("t", -1, 1, -1, 1, 1)
                .build(HIGH);
        assertThat(pieces(sheets, "s").contactArea()).isZero();
        assertThat(pieces(sheets, "s").open()).hasSize(1);
    }

    /** A face of half side 0.25 or 5: a stretch that ends just within it is a foot, one that ends just before it is not. */
    @ParameterizedTest
    @CsvSource({"0.25", "5"})
    void aFootCutsFromWhereItComesIntoTheFace(double half) {
        for (double in : new double[] {-0.05, 0.05}) {
            for (int sign = -1; sign <= 1; sign += 2) {
                for (boolean across : new boolean[] {false, true}) {
                    double from = sign * 9;
                    double to = sign * (half - in);
                    Vector3D[] c = new Vector3D[4];
                    for (int i = 0; i < 4; i++) {
                        double along = i == 0 || i == 3 ? from : to;
                        c[i] = across ? Vector3D.of(along, 0.1, i < 2 ? 0 : 2) : Vector3D.of(0.1, along, i < 2 ? 0 : 2);
                    }
                    for (boolean turned : new boolean[] {false, true}) {
                        TestParts parts = new TestParts().sheet("s", -half, half, -half, half, 0);
                        Scene scene = (turned
                                        ? parts.sheet("wall", c[3], c[2], c[1], c[0])
                                        : parts.sheet("wall", c[0], c[1], c[2], c[3]))
                                .build(HIGH);
                        FacePieces pieces = pieces(scene, "s");
                        assertThat(pieces.open()).hasSize(in > 0 ? 2 : 1);
                        assertThat(area(pieces.open())).isCloseTo(4 * half * half, within(1e-12));
                    }
                }
            }
        }
    }

    /** The foot of an upright sheet cuts where it runs through: in two, whole or in part, and not where it stands beside. */
    @ParameterizedTest
    @CsvSource({"-9, 9, 1, 2", "-2, 2, 1, 2", "6, 9, 1, 1", "-9, 9, 5, 1", "-9, 9, 7, 1"})
    void aFootCutsWhatItRunsThrough(double from, double to, double x, int count) {
        for (boolean across : new boolean[] {false, true}) {
            Vector3D[] c = {
                Vector3D.of(x, from, -1), Vector3D.of(x, to, -1), Vector3D.of(x, to, 2), Vector3D.of(x, from, 2)
            };
            if (across) {
                for (int i = 0; i < 4; i++) {
                    c[i] = Vector3D.of(-c[i].getY(), c[i].getX(), c[i].getZ());
                }
            }
            Scene scene = new TestParts()
                    .sheet("s", -5, 5, -5, 5, 0)
                    .sheet("wall", c[0], c[1], c[2], c[3])
                    .build(HIGH);
            FacePieces pieces = pieces(scene, "s");
            assertThat(pieces.open()).hasSize(count);
            assertThat(area(pieces.open())).isCloseTo(100, within(1e-9));
        }
    }

    @Test
    void facetsOfAFaceAreJoinedToConvexPieces() {
        // An L of three squares of side 2, each of two triangles: at least two convex pieces, and all of the area.
        TestParts parts = new TestParts();
        parts.builder()
                .sheet("l", darkrim.scene.Finish.ABSORBER, "l/back", darkrim.scene.Finish.ABSORBER, TestParts.NOWHERE);
        double[][] squares = {{0, 0}, {2, 0}, {0, 2}};
        for (double[] at : squares) {
            parts.builder()
                    .quad(
                            "l",
                            Vector3D.of(at[0], at[1], 3),
                            Vector3D.of(at[0] + 2, at[1], 3),
                            Vector3D.of(at[0] + 2, at[1] + 2, 3),
                            Vector3D.of(at[0], at[1] + 2, 3));
        }
        Scene scene = parts.build(HIGH);
        Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
        for (String name : new String[] {"l", "l/back"}) {
            Surface surface = scene.surface(name).orElseThrow();
            List<Face> pieces = new FaceMerge(scene, surface, tolerance).pieces();
            assertThat(area(pieces)).isCloseTo(12, within(1e-12));
            assertThat(pieces.size()).isBetween(2, 3);
            for (Face face : pieces) {
                assertThat(face.piece().area()).isPositive();
                assertThat(face.piece().frame().normal().getZ()).isCloseTo(name.equals("l") ? 1 : -1, within(1e-12));
                assertThat(face.piece().middleInSpace().getZ()).isEqualTo(3);
            }
            int[] facets = new int[6];
            double[] sum = {0};
            new FaceMerge(scene, surface, tolerance).forEach((own, corners) -> {
                own.forEach(f -> facets[f - surface.firstFacet()]++);
                for (int i = 3; i + 3 < corners.length; i += 3) {
                    Vector3D a = at(corners, i).subtract(at(corners, 0));
                    sum[0] +=
                            a.cross(at(corners, i + 3).subtract(at(corners, 0))).getZ() / 2;
                }
            });
            assertThat(facets).containsOnly(1);
            assertThat(Math.abs(sum[0])).isCloseTo(12, within(1e-12));
        }
    }

    private static Vector3D at(double[] corners, int i) {
        return Vector3D.of(corners[i], corners[i + 1], corners[i + 2]);
    }

    /** Under a window a knife over the middle of a point hides half of the pupil by symmetry, and the wider pupil of straight lines as well. */
    @Test
    void theShareThroughAWindowLiesBetweenItsBounds() {
        Window window = new Window("window", 60, 6, 1.5, OptionalDouble.empty(), OptionalDouble.empty(), 1);
        Scene scene = new TestParts()
                .sheet("knife", 0, 90, -90, 90, 50)
                .sheet("face", -0.01, 0, -0.01, 0.01, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))).through(window));
        LeastShare least = new LeastShare(scene, TestParts.tree(scene));
        Surface face = scene.surface("face").orElseThrow();
        LeastShare.Bracket found = least.of(face, 0.01);
        double excess = scene.covering().pupil().outline().area()
                / scene.beam().pupil().outline().area();
        assertThat(excess).isGreaterThan(1.0);
        // Hidden at most half of the wider one, seen at most half of it.
        assertThat(found.atLeast()).isBetween(1 - 0.5 * excess - 0.02 * excess, 0.5);
        assertThat(found.atMost()).isBetween(0.5, 0.5 * excess + 0.01);
        LeastShare.Bracket low = least.sideOf(face, 0.3, () -> false);
        assertThat(low.atLeast()).isGreaterThanOrEqualTo(0.3);
        LeastShare.Bracket high = least.against(face, 0.7, () -> false);
        assertThat(high.atMost()).isLessThan(0.7);
        Scene open = new TestParts()
                .sheet("face", -1, 1, -1, 1, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))).through(window));
        LeastShare.Bracket all = new LeastShare(open, TestParts.tree(open))
                .of(open.surface("face").orElseThrow(), 0.01);
        assertThat(all.atLeast()).isCloseTo(1, within(1e-8)).isLessThanOrEqualTo(1);
        assertThat(all.atMost()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1})
    void proofSettingsArePositive(double none) {
        assertThatThrownBy(() -> new ProofSettings(none, 1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ProofSettings(1, (long) none, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ProofSettings(1, 1, none)).isInstanceOf(IllegalArgumentException.class);
        assertThat(new ProofSettings(1, 1, 1e-6).gapWithin(100)).isEqualTo(1e-6);
        // 2^-38 of the bound where that is more.
        assertThat(new ProofSettings(1, 1, 1e-6).gapWithin(0x1p20)).isEqualTo(0x1p-18);
        Tolerance tolerance = Tolerance.of(0x1p20, 1e-6);
        assertThat(tolerance.rounding()).isEqualTo(0x1p-26);
        assertThat(tolerance.flat()).isEqualTo(0x1p-24);
    }

    /** A rim is thrown from the knife, 150 below the pupil or 50, onto it: by so much more rounding moves it. */
    @ParameterizedTest
    @CsvSource({"50, 0.5", "150, 0.5", "250, 1"})
    void theBlurIsTheRoundingThrownFromTheNearestPart(double height, double seen) {
        Scene scene = new TestParts().sheet("knife", 0, 90, -90, 90, height).build(HIGH);
        PupilView view = new VisiblePupil(scene, TestParts.tree(scene)).from(Vector3D.ZERO, Vector3D.Unit.PLUS_Z);
        assertThat(view.areaFraction()).isCloseTo(seen, within(1e-12));
        double rounding = Tolerance.of(scene.bound(), 1e-6).rounding();
        double length = seen < 1 ? 20 * Math.PI + 40 : 40 * Math.PI;
        double thrown = seen < 1 ? 200 / height : 1;
        assertThat(view.roundingFraction() / rounding).isCloseTo(thrown * length / (400 * Math.PI), within(1e-9));
    }

    /** A face under a lid with a hole sees the pupil's middle only: what is cut off by the plane of a tilted element is not seen. */
    @Test
    void anElementSeesNothingBehindItsPlane() {
        Scene scene = new TestParts()
                .sheet("far", 500, 501, 500, 501, 0)
                .build(Beam.of(TestParts.pupilAt(100, Polygon.rectangle(40, 20))));
        VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
        // The plane through the origin and the line x = 5, z = 100 of the pupil: 15 of 40 are in front of it, or 25.
        Vector3D normal = Vector3D.of(100, 0, -5).normalize();
        assertThat(visible.from(Vector3D.ZERO, normal).areaFraction()).isCloseTo(15 / 40.0, within(1e-12));
        assertThat(visible.from(Vector3D.ZERO, normal.negate()).areaFraction()).isCloseTo(25 / 40.0, within(1e-12));
        assertThat(visible.from(Vector3D.of(0, 0, 100), Vector3D.Unit.PLUS_Z).areaFraction())
                .isZero();
        assertThat(visible.from(Vector3D.of(0, 0, 120), Vector3D.Unit.MINUS_Z).areaFraction())
                .isZero();
    }
}
