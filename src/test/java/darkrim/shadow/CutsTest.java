package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import java.util.Optional;
import java.util.OptionalDouble;
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
    private static final Beam BEAM = Beam.of(TestParts.pupilAt(10, Polygon.rectangle(4, 4)));

    private final TestParts parts = new TestParts();

    private record Asked(Scene scene, FacetEdges edges, Tolerance tolerance, Pair pair) {
        int[] all() {
            return IntStream.range(0, scene.facetCount()).toArray();
        }

        boolean sheetCuts() {
            return new SheetCut(scene, scene.corners(), edges).cuts(pair.shaft(), pair, all());
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
        assertThat(new SheetCut(none.scene, none.scene.corners(), none.edges)
                        .cuts(none.pair.shaft(), none.pair, new int[0]))
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
        SheetCut cut = new SheetCut(small.scene, small.scene.corners(), small.edges);
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

    @Test
    void aBlockHasItsEdgesAndIsClosedAndASheetIsNot() {
        Scene scene = new TestParts()
                .block("b", 0, 1, 0, 2, 0, 3)
                .sheet("s", 5, 6, 5, 6, 1)
                .build(BEAM);
        FacetEdges edges = FacetEdges.of(scene);
        assertThat(edges).isSameAs(FacetEdges.of(scene));
        assertThat(edges.facetCount()).isEqualTo(14);
        assertThat(edges.count()).isEqualTo(18 + 5);
        int single = 0;
        for (int f = 0; f < 14; f++) {
            for (int k = 0; k < 3; k++) {
                int edge = edges.of(f, k);
                single += edges.useCount(edge) == 1 ? 1 : 0;
                assertThat(edges.useCount(edge)).isBetween(1, 2);
                boolean own = false;
                for (int u = 0; u < edges.useCount(edge); u++) {
                    own |= edges.use(edge, u) == f;
                }
                assertThat(own).isTrue();
                Vector3D[] ends = {
                    Vector3D.of(edges.ends()[6 * edge], edges.ends()[6 * edge + 1], edges.ends()[6 * edge + 2]),
                    Vector3D.of(edges.ends()[6 * edge + 3], edges.ends()[6 * edge + 4], edges.ends()[6 * edge + 5])
                };
                assertThat(ends).containsExactlyInAnyOrder(scene.corner(f, k), scene.corner(f, (k + 1) % 3));
            }
        }
        assertThat(single).isEqualTo(4);
        assertThat(edges.isClosed(edges.solid(0))).isTrue();
        assertThat(edges.isClosed(edges.solid(13))).isFalse();
        assertThat(edges.solid(0)).isEqualTo(edges.solid(11)).isNotEqualTo(edges.solid(12));
        assertThat(edges.facets(edges.solid(0)))
                .containsExactly(IntStream.range(0, 12).toArray());
        assertThat(edges.facets(edges.solid(12))).containsExactly(12, 13);
        double[] box = {0, 0, 0, 1, 2, 3};
        for (int k = 0; k < 6; k++) {
            assertThat(edges.bound(edges.solid(0), k)).isEqualTo(box[k]);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.4, false", "0.6, true"})
    void boxesTouchWithinADistanceAlongEveryAxis(double distance, boolean touch) {
        for (int axis = 0; axis < 3; axis++) {
            for (double side : new double[] {-1.5, 1.5}) {
                double[] at = new double[3];
                at[axis] = side;
                Scene scene = new TestParts()
                        .block("a", 0, 1, 0, 1, 0, 1)
                        .block("b", at[0], at[0] + 1, at[1], at[1] + 1, at[2], at[2] + 1)
                        .build(BEAM);
                FacetEdges edges = FacetEdges.of(scene);
                assertThat(edges.boxesTouch(edges.solid(0), edges.solid(12), distance))
                        .isEqualTo(touch);
                assertThat(edges.boxesTouch(edges.solid(12), edges.solid(0), distance))
                        .isEqualTo(touch);
                double[] points = {at[0], at[1], at[2], at[0] + 1, at[1] + 1, at[2] + 1};
                assertThat(edges.boxTouches(edges.solid(0), points, distance)).isEqualTo(touch);
            }
        }
    }

    /** Three sheets that meet at one edge: a hinge. And a block turned inside out is as closed as any. */
    @Test
    void anEdgeMayHaveMoreThanTwoFacets() {
        Vector3D a = Vector3D.of(0, 0, 0);
        Vector3D b = Vector3D.of(0, 1, 0);
        Scene scene = new TestParts()
                .sheet("x", a, b, Vector3D.of(1, 1, 0), Vector3D.of(1, 0, 0))
                .sheet("y", a, b, Vector3D.of(-1, 1, 0.5), Vector3D.of(-1, 0, 0.5))
                .sheet("z", a, b, Vector3D.of(0, 1, 1), Vector3D.of(0, 0, 1))
                .build(BEAM);
        FacetEdges edges = FacetEdges.of(scene);
        int most = 0;
        for (int e = 0; e < edges.count(); e++) {
            most = Math.max(most, edges.useCount(e));
        }
        assertThat(most).isEqualTo(3);
        assertThat(edges.solid(0)).isEqualTo(edges.solid(5));
    }
}
