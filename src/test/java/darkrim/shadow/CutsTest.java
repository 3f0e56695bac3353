package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One pair of pieces, a square of half side 2 at z = 10 above one of half side 1 at z = 0, and each way to close it by itself. */
class CutsTest {
    private record Asked(Scene scene, FacetEdges edges, Tolerance tolerance, Pair pair) {
        int[] all() {
            return IntStream.range(0, scene.facetCount()).toArray();
        }

        boolean sheetCuts() {
            return new SheetCut(scene.corners(), edges).cuts(pair.shaft(), pair, all());
        }

        boolean planeCovers() {
            return new CoverCut(scene, scene.corners(), edges, tolerance).covers(pair.shaft(), pair, all());
        }

        boolean sliceCovers() {
            CoverCut judge = new CoverCut(scene, scene.corners(), edges, tolerance);
            return new SliceCut(scene.corners(), edges, tolerance).covers(judge, pair.shaft(), pair, all());
        }
    }

    private static FlatPiece square(double half, double z, boolean up) {
        Frame frame = Frame.about(Vector3D.of(0, 0, z), up ? Vector3D.Unit.PLUS_Z : Vector3D.Unit.MINUS_Z);
        return FlatPiece.of(frame, new double[] {-half, -half, half, -half, half, half, -half, half});
    }

    /** Pairs are asked about twice: as they are, and turned and moved. */
    private static final QuaternionRotation TURN =
            QuaternionRotation.fromAxisAngle(Vector3D.of(1, -2, 0.7), Math.toRadians(14));

    private static Vector3D placed(Vector3D point) {
        return TURN.apply(point).add(Vector3D.of(3, -5, 2));
    }

    private static FlatPiece turned(FlatPiece piece) {
        Frame own = piece.frame();
        return FlatPiece.of(Frame.of(placed(own.origin()), TURN.apply(own.u()), TURN.apply(own.v())), piece.plane());
    }

    private static Asked ask(Consumer<TestParts> build, double radius, boolean turned) {
        TestParts made = turned ? new TestParts().placed(CutsTest::placed) : new TestParts();
        build.accept(made);
        FlatPiece pupil = square(2, 10, false);
        FlatPiece face = square(1, 0, true);
        Scene scene = made.build(Beam.of(
                new Pupil(Polygon.rectangle(4, 4), turned ? turned(pupil).frame() : pupil.frame())));
        Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
        return new Asked(
                scene,
                FacetEdges.of(scene),
                tolerance,
                new Pair(turned ? turned(pupil) : pupil, turned ? turned(face) : face, radius, tolerance));
    }

    private static Asked ask(Consumer<TestParts> build, double radius) {
        Asked plain = ask(build, radius, false);
        assertThat(ask(build, radius, true).sheetCuts()).isEqualTo(plain.sheetCuts());
        return plain;
    }

    private static Asked ask(Consumer<TestParts> build) {
        return ask(build, 0);
    }

    /** At z = 5 the shaft has half side 1.5. */
    @ParameterizedTest
    @CsvSource({"-0.1, false", "-1e-6, false", "1e-6, true", "0.1, true"})
    void aSheetThatReachesBeyondTheShaftToEverySideCutsIt(double beyond, boolean cuts) {
        for (int side = 0; side < 4; side++) {
            double[] reach = {9, 9, 9, 9};
            reach[side] = 1.5 + beyond;
            Asked asked = ask(to -> to.sheet("s", -reach[0], reach[1], -reach[2], reach[3], 5));
            assertThat(asked.sheetCuts()).isEqualTo(cuts);
        }
    }

    @Test
    void noFacetsCutNothingAndTwoSheetsCutAsWellAsOne() {
        Asked none = ask(to -> to.sheet("far", 50, 51, 50, 51, 5));
        assertThat(new SheetCut(none.scene.corners(), none.edges).cuts(none.pair.shaft(), none.pair, new int[0]))
                .isFalse();
        assertThat(none.sheetCuts()).isFalse();
        assertThat(ask(to -> to.sheet("a", -9, 9, -9, 9, 5).sheet("b", -9, 9, -9, 9, 6))
                        .sheetCuts())
                .isTrue();
        assertThat(ask(to -> to.sheet("a", -9, 9, -9, 9, 5).sheet("b", 0, 9, -9, 9, 6))
                        .sheetCuts())
                .isTrue();
    }

    @Test
    void aSolidWithinTheShaftIsMetTwiceAndCutsNothing() {
        Asked small = ask(to -> to.block("b", -0.2, 0.2, -0.2, 0.2, 4, 5));
        assertThat(small.sheetCuts()).isFalse();
        assertThat(ask(to -> to.block("b", -9, 9, -9, 9, 4, 5)).sheetCuts()).isTrue();
        // A strip across: the shaft passes on both of its sides.
        assertThat(ask(to -> to.block("b", -9, 9, -0.3, 0.3, 4, 5)).sheetCuts()).isFalse();
        // The edges that keep it open are those of the small block, each once.
        SheetCut cut = new SheetCut(small.scene.corners(), small.edges);
        cut.cuts(small.pair.shaft(), small.pair, small.all());
        assertThat(cut.openCount()).isEqualTo(12);
        assertThat(IntStream.range(0, 12).map(cut::open).distinct().count()).isEqualTo(12);
        for (int i = 0; i < 12; i++) {
            int edge = cut.open(i);
            assertThat(small.scene.plane(small.edges.use(edge, 0)))
                    .isNotEqualTo(small.scene.plane(small.edges.use(edge, 1)));
        }
        // Asked about another pair it begins anew.
        assertThat(cut.cuts(small.pair.shaft(), small.pair, new int[0])).isFalse();
        assertThat(cut.openCount()).isZero();
    }

    /**
     * The first line meets the top of the block once for sure, and the bottom along a diagonal; what it met does not count once another line is
     * taken, which passes beside.
     */
    @Test
    void whatAnUnsureLineMetIsForgottenByTheNext() {
        double[] bottom = {-0.2, 0.2, -0.2, 0.2};
        double[][] tops = {{-0.3, 0.2, -0.2, 0.2}, {-0.2, 0.3, -0.2, 0.2}, {-0.2, 0.2, -0.3, 0.2}};
        for (double[] top : tops) {
            assertThat(ask(to -> to.frustum("b", bottom, 4, top, 5), 0, false).sheetCuts())
                    .isFalse();
            assertThat(ask(to -> to.frustum("b", top, 4, bottom, 5), 0, false).sheetCuts())
                    .isFalse();
        }
    }

    @Test
    void aHoodOfFiveSidesOverTheFaceCutsTheShaftAndOneWithoutAWallDoesNot() {
        // Walls beside the face down to below it; the foot lies behind the plane of the face.
        Asked closed = ask(to -> to.block("hood", -1.2, 1.2, -1.2, 1.2, -1, 3));
        assertThat(closed.sheetCuts()).isTrue();
        Asked open = ask(to -> {
            to.sheet("top", -1.2, 1.2, -1.2, 1.2, 3);
            wall(to, "a", 1.2);
        });
        assertThat(open.sheetCuts()).isFalse();
        // A face that is moved by more than the hood leaves room for is not under it any more.
        assertThat(ask(to -> to.block("hood", -1.2, 1.2, -1.2, 1.2, -1, 3), 0.1).sheetCuts())
                .isTrue();
        assertThat(ask(to -> to.block("hood", -1.2, 1.2, -1.2, 1.2, -1, 3), 0.3).sheetCuts())
                .isFalse();
    }

    private static void wall(TestParts to, String name, double x) {
        to.sheet(
                name,
                Vector3D.of(x, -1.2, -1),
                Vector3D.of(x, 1.2, -1),
                Vector3D.of(x, 1.2, 3),
                Vector3D.of(x, -1.2, 3));
    }

    @Test
    void sheetsInFrontOfThePupilOrBehindTheFaceCutNothing() {
        assertThat(ask(to -> to.sheet("s", -9, 9, -9, 9, 11)).sheetCuts()).isFalse();
        assertThat(ask(to -> to.sheet("s", -9, 9, -9, 9, 10)).sheetCuts()).isFalse();
        assertThat(ask(to -> to.sheet("s", -9, 9, -9, 9, -1)).sheetCuts()).isFalse();
        assertThat(ask(to -> to.sheet("s", -9, 9, -9, 9, 0)).sheetCuts()).isFalse();
        assertThat(ask(to -> to.sheet("s", -9, 9, -9, 9, 1e-3)).sheetCuts()).isTrue();
        // One that runs through the face has part of it on either side.
        assertThat(ask(to -> to.sheet(
                                "s",
                                Vector3D.of(-9, -9, -1),
                                Vector3D.of(9, -9, -1),
                                Vector3D.of(9, 9, 1),
                                Vector3D.of(-9, 9, 1)))
                        .sheetCuts())
                .isFalse();
    }

    /** Two blocks that touch along x = 0.3 without sharing corners; each sticks out, so that no facet alone covers. */
    private static Consumer<TestParts> two(double slit, double overhang) {
        return to -> to.block("left", -9, 0.3, -9, 9, 4, 5)
                .block("right", 0.3 + slit, 9, -9.5, 9.5, 4 - overhang, 5 + overhang);
    }

    @ParameterizedTest
    @CsvSource({"0, true", "0.5e-6, true", "1.2e-6, false", "0.01, false"})
    void twoBlocksThatTouchCoverTheShaftTogether(double slit, boolean covered) {
        for (double overhang : new double[] {0, 0.5}) {
            for (boolean turned : new boolean[] {false, true}) {
                Asked asked = ask(two(slit, overhang), 0, turned);
                assertThat(asked.sheetCuts()).isFalse();
                assertThat(asked.planeCovers()).isEqualTo(covered);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.5, 0.7})
    void aSliceCoversWhatIsInsideOfSolids(double overhang) {
        for (boolean turned : new boolean[] {false, true}) {
            assertThat(ask(two(0, overhang), 0, turned).sliceCovers()).isTrue();
            assertThat(ask(two(1e-3, overhang), 0, turned).sliceCovers()).isFalse();
        }
        // The pupil inside one of them proves nothing.
        Asked inside = ask(to -> to.block("left", -9, 0.3, -9, 9, 4, 12).block("right", 0.3, 9, -9, 9, 4, 5));
        assertThat(inside.sliceCovers()).isFalse();
        // Sheets have no inside.
        assertThat(ask(to -> to.sheet("a", -9, 0, -9, 9, 5).sheet("b", 0, 9, -8, 8, 5))
                        .sliceCovers())
                .isFalse();
    }

    @Test
    void sheetsInOnePlaneCoverTogetherIfTheyMeet() {
        for (double slit : new double[] {0, 1e-3}) {
            for (boolean turned : new boolean[] {false, true}) {
                Asked asked =
                        ask(to -> to.sheet("a", -9, 0.2, -9, 9, 5).sheet("b", 0.2 + slit, 9, -8, 8, 5), 0, turned);
                assertThat(asked.planeCovers()).isEqualTo(slit == 0);
                assertThat(asked.sheetCuts()).isFalse();
            }
        }
        // In two planes a micrometre apart they do not.
        assertThat(ask(to -> to.sheet("a", -9, 0.2, -9, 9, 5).sheet("b", 0.2, 9, -8, 8, 5.001))
                        .planeCovers())
                .isFalse();
    }

    /** A sheet laid twice is met twice: as a sheet nothing, as material in a plane one cover. */
    @Test
    void aSheetLaidTwiceCoversInItsPlane() {
        Consumer<TestParts> twice = to -> to.sheet("a", -9, 9, -9, 9, 5).sheet("b", -9, 9, -9, 9, 5);
        assertThat(ask(twice).sheetCuts()).isFalse();
        assertThat(ask(twice).planeCovers()).isTrue();
        Consumer<TestParts> short1 = to -> to.sheet("a", -9, 1.4, -9, 9, 5).sheet("b", -9, 1.4, -9, 9, 5);
        assertThat(ask(short1).planeCovers()).isFalse();
    }

    /**
     * Lines cross a plane at a height of 5 within (3 + 3 + 10) / 10 (1 + 1 / 2) = 2.4 times the rounding of their ends: a sixteenth of the gap at
     * the most.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 2.3, 2.5, 9})
    void aPlaneWhereCrossingsAreUncertainIsNotUsed(double times) {
        double gap = 1e-6;
        Tolerance rough = new Tolerance(gap / 16 / times, gap / 64, gap);
        Asked sheets = ask(to -> to.sheet("a", -9, 0.2, -9, 9, 5).sheet("b", 0.2, 9, -8, 8, 5), 0, false);
        Pair flat = new Pair(sheets.pair.pupil(), sheets.pair.face(), 0, rough);
        boolean covered = new CoverCut(sheets.scene, sheets.scene.corners(), sheets.edges, rough)
                .covers(flat.shaft(), flat, sheets.all());
        assertThat(covered).isEqualTo(times > 2.4);
    }

    @Test
    void aFaceIsNoCoverForItself() {
        assertThat(ask(to -> to.sheet("a", -9, 0, -9, 9, 0).sheet("b", 0, 9, -8, 8, 0))
                        .planeCovers())
                .isFalse();
        assertThat(ask(to -> to.sheet("a", -9, 0, -9, 9, 10).sheet("b", 0, 9, -8, 8, 10))
                        .planeCovers())
                .isFalse();
    }
}
