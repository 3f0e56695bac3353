package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.assembly.Die;
import darkrim.assembly.Opening;
import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.OpeningMargin.Extent;
import darkrim.shadow.OpeningMargin.Room;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A lid from z = 20 to z = 21 with a square opening of half side 10, below a pupil that reaches 20 to each side, 200 up. Light over the edge at
 * a of the lid's lower side comes from the far rim and lands at (a + 2) / 0.9.
 */
class OpeningMarginsTest {
    private static final double[] SQUARE = {-10, 10, -10, 10};
    private static final double[][] WALL = {{21, 0}, {20, 0}};

    private static List<Vector3D> loop(double[] o, double[] step) {
        double[] w = {o[0] - step[1], o[1] + step[1], o[2] - step[1], o[3] + step[1]};
        return List.of(
                Vector3D.of(w[0], w[2], step[0]),
                Vector3D.of(w[1], w[2], step[0]),
                Vector3D.of(w[1], w[3], step[0]),
                Vector3D.of(w[0], w[3], step[0]));
    }

    private static Opening opening(double[]... steps) {
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

    private static TestParts lid(double outer, double[]... steps) {
        return new TestParts().plate("lid", new double[] {-outer, outer, -outer, outer}, List.of(SQUARE), steps);
    }

    private static Beam beam(Outline outline) {
        return Beam.of(TestParts.pupilAt(200, outline));
    }

    private static Die die(double half) {
        List<Vector3D> active = List.of(
                Vector3D.of(-half, -half, 0),
                Vector3D.of(half, -half, 0),
                Vector3D.of(half, half, 0),
                Vector3D.of(-half, half, 0));
        return new Die("die", TestParts.NOWHERE, active, active, active);
    }

    private static List<OpeningMargin> margins(
            Scene scene, Opening opening, List<String> dark, List<String> lit, Die... dies) {
        return new OpeningMargins(
                        scene,
                        TestParts.tree(scene),
                        dark.stream()
                                .map(name -> scene.surface(name).orElseThrow())
                                .toList(),
                        lit.stream()
                                .map(name -> scene.surface(name).orElseThrow())
                                .toList(),
                        List.of(dies))
                .of(opening, () -> false);
    }

    private static OpeningMargin side(List<OpeningMargin> margins, String name) {
        return margins.stream()
                .filter(margin ->
                        margin.extent() == Extent.SIDE && margin.sides().equals(List.of(name)))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aSideCanBeMovedOutUntilLightOverItReachesADarkFace(boolean round) {
        // From x = 14 on: over an edge at 14 * 0.9 - 2 = 10.6.
        Scene scene = lid(60, WALL)
                .sheet("face", 14, 19, -3, 3, 0)
                .build(beam(round ? Ring.disc(20) : Polygon.rectangle(40, 40)));
        List<OpeningMargin> found = margins(scene, opening(WALL), List.of("face"), List.of());
        assertThat(found).hasSize(9);
        for (OpeningMargin margin : found) {
            assertThat(margin.opening()).isEqualTo("lid/opening[0]");
            assertThat(margin.inward()).isEmpty();
            if (margin.sides().contains("+x")) {
                Room room = margin.outward().orElseThrow();
                assertThat(room.millimetres()).isCloseTo(0.6, within(2e-6)).isLessThanOrEqualTo(0.6);
                assertThat(room.atLeast()).isFalse();
                assertThat(room.surface()).isEqualTo("face");
            } else {
                assertThat(margin.outward()).isEmpty();
            }
        }
        assertThat(found.stream().filter(margin -> margin.extent() == Extent.CORNER))
                .extracting(OpeningMargin::sides)
                .containsExactly(List.of("-x", "-y"), List.of("-y", "+x"), List.of("+x", "+y"), List.of("+y", "-x"));
        assertThat(found.get(8).extent()).isEqualTo(Extent.WHOLE);
        assertThat(found.get(8).sides()).containsExactly("-y", "+x", "+y", "-x");
    }

    /** Through the corner light reaches further than over each side alone: both must be moved for a face on the diagonal. */
    @Test
    void aCornerMayHaveLessRoomThanEachOfItsSides() {
        // From (14, 15) on, a square pupil: x needs 0.6 and y needs 15 * 0.9 - 2 - 10 = 1.5, both at once.
        Scene scene = lid(60, WALL).sheet("face", 14, 16, 15, 17, 0).build(beam(Polygon.rectangle(40, 40)));
        List<OpeningMargin> found = margins(scene, opening(WALL), List.of("face"), List.of());
        for (OpeningMargin margin : found) {
            if (margin.sides().contains("+x") && margin.sides().contains("+y")) {
                assertThat(margin.outward().orElseThrow().millimetres()).isCloseTo(1.5, within(2e-6));
            } else {
                // Over one side alone nothing comes, as far as it is moved.
                assertThat(margin.outward().map(Room::millimetres).orElse(4.0)).isEqualTo(4);
                assertThat(margin.outward().map(Room::atLeast).orElse(true)).isTrue();
            }
        }
    }

    /** The land ends at z = 20.5, and the bevel draws back below it: light that goes outward passes the end of the land. */
    @Test
    void theLandIsMovedWithItsBevel() {
        double[][] steps = {{21, 0}, {20.5, 0}, {20, 0.8}};
        Scene scene = lid(60, steps).sheet("face", 14, 19, -3, 3, 0).build(beam(Ring.disc(20)));
        List<OpeningMargin> found = margins(scene, opening(steps), List.of("face"), List.of());
        double edge = 14 - 34 * 20.5 / 200;
        assertThat(side(found, "+x").outward().orElseThrow().millimetres()).isCloseTo(edge - 10, within(2e-6));
    }

    @Test
    void whatIsLitIsCuredByMovingTheSideIn() {
        // From x = 13 on: 13 * 0.9 - 2 = 9.7.
        Scene scene = lid(60, WALL).sheet("face", 13, 18, -3, 3, 0).build(beam(Ring.disc(20)));
        List<OpeningMargin> found = margins(scene, opening(WALL), List.of(), List.of("face"));
        Room room = side(found, "+x").outward().orElseThrow();
        assertThat(room.millimetres()).isCloseTo(-0.3, within(2e-6)).isLessThanOrEqualTo(-0.3);
        assertThat(room.surface()).isEqualTo("face");
        assertThat(side(found, "-x").outward()).isEmpty();
        // What this side does not light it cannot cure: a face at the middle sees the pupil whatever the side does.
        Scene middle = lid(60, WALL).sheet("face", -1, 1, -1, 1, 0).build(beam(Ring.disc(20)));
        assertThat(side(margins(middle, opening(WALL), List.of(), List.of("face")), "+x")
                        .outward())
                .isEmpty();
    }

    @Test
    void theNearestOfSeveralFacesSetsTheRoom() {
        Scene scene = lid(60, WALL)
                .sheet("far", 16, 19, -3, 3, 0)
                .sheet("near", 14, 15, -3, 3, 0)
                .sheet("other", 17, 19, 4, 6, 0)
                .build(beam(Ring.disc(20)));
        Room room = side(margins(scene, opening(WALL), List.of("far", "near", "other"), List.of()), "+x")
                .outward()
                .orElseThrow();
        assertThat(room.surface()).isEqualTo("near");
        assertThat(room.millimetres()).isCloseTo(0.6, within(2e-6));
    }

    /** A screen stands between the opening and the face: nothing comes however far the side is moved. */
    @Test
    void aSideThatBringsNoLightAsFarAsItIsMovedHasAtLeastThat() {
        Scene scene = lid(60, WALL)
                .sheet("face", 14, 15, -3, 3, 0)
                .sheet("screen", -9, 40, -30, 30, 2)
                .build(beam(Ring.disc(20)));
        Room room = side(margins(scene, opening(WALL), List.of("face"), List.of()), "+x")
                .outward()
                .orElseThrow();
        assertThat(room.millimetres()).isEqualTo(4);
        assertThat(room.atLeast()).isTrue();
        assertThat(room.surface()).isEmpty();
    }

    /**
     * A strip at z = 2 up to x = 14.6 hides the near part of the face: light from the far rim first comes to x = (14.6 + 0.2) / 0.99. No guess
     * says so, for none looks at anything but the opening.
     */
    @Test
    void theRoomIsFoundByHalvingWhereSomethingElseHidesPartOfTheFace() {
        Scene scene = lid(60, WALL)
                .sheet("face", 14, 19, -3, 3, 0)
                .sheet("strip", 12, 14.6, -30, 30, 2)
                .build(beam(Polygon.rectangle(40, 40)));
        Room room = side(margins(scene, opening(WALL), List.of("face"), List.of()), "+x")
                .outward()
                .orElseThrow();
        // Where lid and strip block only together a proof may end early, and says so.
        double exact = 14.8 / 0.99 * 0.9 - 2 - 10;
        assertThat(room.millimetres()).isBetween(0.7, exact + 2e-6);
        assertThat(room.atLeast()).isEqualTo(room.millimetres() < exact - 2e-3);
        assertThat(room.surface()).isEqualTo("face");
    }

    @Test
    void aSideIsNotMovedBeyondTheRimOfItsPlate() {
        // 2.5 mm of plate are left: 4 is too far, 2 is not. The screen lets nothing through.
        Scene scene = lid(12.5, WALL)
                .sheet("face", 14, 15, -3, 3, 0)
                .sheet("screen", -40, 40, -40, 40, 2)
                .build(beam(Ring.disc(20)));
        List<OpeningMargin> found = margins(scene, opening(WALL), List.of("face"), List.of());
        assertThat(side(found, "+x").outward().orElseThrow().millimetres()).isEqualTo(2);
    }

    /** Lines from the rim of the active area to that of the pupil pass the lid's upper side at v + (20 - v) 0.105. */
    @ParameterizedTest
    @CsvSource({"3, true", "3, false", "9, true", "9, false"})
    void aSideCanBeMovedInUntilADetectorLosesPartOfThePupil(double half, boolean round) {
        Scene scene = lid(60, WALL)
                .sheet("face", 40, 41, -3, 3, 0)
                .build(beam(round ? Ring.disc(20) : Polygon.rectangle(40, 40)));
        List<OpeningMargin> found = margins(scene, opening(WALL), List.of(), List.of(), die(half));
        double crossing = Math.max(half + (20 - half) * 0.1, half + (20 - half) * 0.105);
        for (OpeningMargin margin : found) {
            Room room = margin.inward().orElseThrow();
            assertThat(room.millimetres()).isCloseTo(10 - crossing, within(1e-9));
            assertThat(room.atLeast()).isFalse();
            assertThat(room.surface()).isEqualTo("die");
            assertThat(margin.outward()).isEmpty();
        }
    }

    /** The active area is not centred: 1 to 5 along x and -2 to 1 along y. */
    @Test
    void theRoomOfEachSideIsItsOwn() {
        List<Vector3D> active =
                List.of(Vector3D.of(1, -2, 0), Vector3D.of(5, -2, 0), Vector3D.of(5, 1, 0), Vector3D.of(1, 1, 0));
        Scene scene = lid(60, WALL).sheet("face", 40, 41, -3, 3, 0).build(beam(Ring.disc(20)));
        Die die = new Die("die", TestParts.NOWHERE, active, active, active);
        Die elsewhere = new Die(
                "elsewhere",
                TestParts.NOWHERE,
                active.stream().map(corner -> corner.add(Vector3D.of(30, 0, 0))).toList(),
                active,
                active);
        List<OpeningMargin> found = margins(scene, opening(WALL), List.of(), List.of(), elsewhere, die);
        assertThat(inward(side(found, "+x"))).isCloseTo(10 - (5 + 15 * 0.105), within(1e-9));
        assertThat(inward(side(found, "-x"))).isCloseTo(10 - (-1 + 21 * 0.105), within(1e-9));
        assertThat(inward(side(found, "+y"))).isCloseTo(10 - (1 + 19 * 0.105), within(1e-9));
        assertThat(inward(side(found, "-y"))).isCloseTo(10 - (2 + 18 * 0.105), within(1e-9));
        assertThat(inward(found.get(8))).isCloseTo(10 - (5 + 15 * 0.105), within(1e-9));
    }

    private static double inward(OpeningMargin margin) {
        assertThat(margin.inward().orElseThrow().surface()).isEqualTo("die");
        return margin.inward().orElseThrow().millimetres();
    }

    @Test
    void anOpeningThatIsNotConvexHasNoMarginsAndNeitherHasAStoppedSearch() {
        List<Vector3D> dent = new ArrayList<>(loop(SQUARE, WALL[0]));
        dent.add(Vector3D.of(-2, 0, 21));
        Opening bent = new Opening(
                "lid/opening[0]", TestParts.NOWHERE, List.of("a", "b", "c", "d", "e"), dent, dent, dent, dent);
        Scene scene = lid(60, WALL).sheet("face", 14, 19, -3, 3, 0).build(beam(Ring.disc(20)));
        assertThat(margins(scene, bent, List.of("face"), List.of())).isEmpty();
        OpeningMargins margins = new OpeningMargins(
                scene, TestParts.tree(scene), List.of(scene.surface("face").orElseThrow()), List.of(), List.of());
        assertThat(margins.of(opening(WALL), () -> true)).isEmpty();
    }

    @Test
    void cornersSlideAlongTheSidesThatStay() {
        Scene scene = lid(60, WALL).build(beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, opening(WALL));
        assertThat(sides.count()).isEqualTo(4);
        assertThat(sides.isConvex()).isTrue();
        assertThat(sides.normal().distance(Vector3D.Unit.PLUS_Z)).isLessThan(1e-12);
        assertThat(sides.outward(1).distance(Vector3D.Unit.PLUS_X)).isLessThan(1e-12);
        assertThat(sides.swept(new boolean[] {false, true, false, false}, 3)).containsExactly(10, -10, 20, 13, 10, 21);
        assertThat(sides.swept(new boolean[] {false, true, true, false}, -3)).containsExactly(-10, -10, 20, 10, 10, 21);
        assertThat(sides.canMove(new boolean[] {false, true, false, false}, 49)).isTrue();
        assertThat(sides.canMove(new boolean[] {false, true, false, false}, 51)).isFalse();
        assertThat(sides.canMove(new boolean[] {false, true, false, false}, -19))
                .isTrue();
        assertThat(sides.canMove(new boolean[] {false, true, false, false}, -21))
                .isFalse();
        assertThat(sides.canMove(new boolean[] {true, true, true, true}, -9)).isTrue();
        assertThat(sides.canMove(new boolean[] {true, true, true, true}, -11)).isFalse();
    }

    /** The plate and its walls before and after: areas of a frame with a rectangle taken out. */
    @ParameterizedTest
    @CsvSource({"45, 0", "-17, 0", "3, 2", "-5, -9"})
    void theMovedPlateHasTheAreasOfItsNewOpening(double byX, double byY) {
        Scene scene = lid(60, WALL).build(beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, opening(WALL));
        Scene moved =
                sides.scene(new boolean[] {false, true, false, false}, byX).orElseThrow();
        assertThat(area(moved, "lid/+z")).isCloseTo(120 * 120 - (20 + byX) * 20, within(1e-6));
        assertThat(area(moved, "lid/-z")).isCloseTo(120 * 120 - (20 + byX) * 20, within(1e-6));
        assertThat(area(moved, "lid/opening[0]/step[0]/+x")).isCloseTo(20, within(1e-9));
        assertThat(area(moved, "lid/opening[0]/step[0]/-y")).isCloseTo(20 + byX, within(1e-9));
        assertThat(area(moved, "lid/opening[0]/step[0]/+y")).isCloseTo(20 + byX, within(1e-9));
        // Both sides of a corner by the same: a square that keeps its other corner.
        if (byY != 0) {
            Scene corner =
                    sides.scene(new boolean[] {false, true, true, false}, byY).orElseThrow();
            assertThat(area(corner, "lid/+z")).isCloseTo(120 * 120 - (20 + byY) * (20 + byY), within(1e-6));
        }
    }

    private static double area(Scene scene, String name) {
        double sum = 0;
        Surface surface = scene.surface(name).orElseThrow();
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            sum += scene.facetArea(f);
        }
        return sum;
    }

    /** A post of another part stands against the corner of the opening: it stays when the side is moved. */
    @Test
    void partsThatShareACornerWithThePlateStay() {
        Scene scene = lid(60, WALL).block("post", 10, 11, 10, 11, 10, 20).build(beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, opening(WALL));
        Scene moved =
                sides.scene(new boolean[] {false, true, false, false}, 0.5).orElseThrow();
        Surface post = scene.surface("post/+z").orElseThrow();
        for (int f = post.firstFacet(); f < post.firstFacet() + post.facetCount(); f++) {
            for (int k = 0; k < 3; k++) {
                assertThat(moved.corner(f, k)).isEqualTo(scene.corner(f, k));
            }
        }
    }

    /** Sides that meet at another angle than a right one: a hexagon of inner radius 10 stays one of 12. */
    @Test
    void aHexagonMovedOutIsAHexagon() {
        List<Vector3D> hexagon = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            double angle = Math.PI * (2 * i + 1) / 6;
            double around = 10 / Math.cos(Math.PI / 6);
            hexagon.add(Vector3D.of(around * Math.cos(angle), around * Math.sin(angle), 21));
        }
        Opening opening = new Opening(
                "lid/opening[0]",
                TestParts.NOWHERE,
                List.of("1", "2", "3", "4", "5", "6"),
                hexagon,
                hexagon,
                hexagon,
                hexagon);
        Scene scene = lid(60, WALL).build(beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, opening);
        double far = 12 / Math.cos(Math.PI / 6);
        double[] box = sides.swept(new boolean[] {true, true, true, true, true, true}, 2);
        assertThat(box[4]).isCloseTo(far, within(1e-9));
        assertThat(box[3]).isCloseTo(12, within(1e-9));
        // One side alone: its corners slide along their neighbours, 2 tan 30 each way.
        double[] one = sides.swept(new boolean[] {true, false, false, false, false, false}, 2);
        Vector3D out = sides.outward(0);
        Vector3D along = hexagon.get(1).subtract(hexagon.get(0)).normalize();
        double slide = 2 * Math.tan(Math.PI / 6);
        Vector3D from = hexagon.get(0).add(out.multiply(2)).add(along.multiply(slide));
        Vector3D to = hexagon.get(1).add(out.multiply(2)).subtract(along.multiply(slide));
        for (int k = 0; k < 2; k++) {
            double[] all = {
                from.toArray()[k],
                to.toArray()[k],
                hexagon.get(0).toArray()[k],
                hexagon.get(1).toArray()[k]
            };
            assertThat(one[k]).isCloseTo(Arrays.stream(all).min().orElseThrow(), within(1e-9));
            assertThat(one[k + 3]).isCloseTo(Arrays.stream(all).max().orElseThrow(), within(1e-9));
        }
    }

    /** Light comes around the outer rim of the plate as well, at 25: from x = 25.56 on. The side alone makes no such face dark. */
    @Test
    void aFaceThatIsLitElsewhereTooIsNotCuredByTheSide() {
        Scene scene = lid(25, WALL)
                .sheet("both", 13, 27, -3, 3, 0)
                .sheet("one", 13.2, 20, 4, 5, 0)
                .build(beam(Ring.disc(20)));
        assertThat(side(margins(scene, opening(WALL), List.of(), List.of("both")), "+x")
                        .outward())
                .isEmpty();
        Room room = side(margins(scene, opening(WALL), List.of(), List.of("both", "one")), "+x")
                .outward()
                .orElseThrow();
        assertThat(room.surface()).isEqualTo("one");
        // Not by the far rim itself, for the face lies aside of the axis: between 13.2 and what that would need.
        assertThat(room.millimetres()).isBetween(13.2 * 0.9 - 2 - 10 - 1e-6, 0.0);
    }

    /** Against the greatest of many lines; the pupil is tilted against the plate, so that its farthest point is not plain. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void noLineOfATiltedPupilPassesNearerToASideThanItsRoom(boolean round) {
        Scene scene = lid(60, WALL).build(beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, opening(WALL));
        Outline outline = round ? Ring.disc(20) : Polygon.rectangle(50, 20);
        Pupil pupil = new Pupil(
                outline, Frame.of(Vector3D.of(15, -8, 90), Vector3D.of(0.8, 0.2, 0.5), Vector3D.of(-0.1, -1, 0.3)));
        List<Vector3D> area = die(4).active();
        for (int side = 0; side < 4; side++) {
            double least = Double.POSITIVE_INFINITY;
            for (List<Vector3D> loop : sides.loops()) {
                for (Vector3D corner : area) {
                    for (int i = 0; i < 3600; i++) {
                        double angle = Math.toRadians(i * 0.1);
                        double[] rim = round
                                ? new double[] {20 * Math.cos(angle), 20 * Math.sin(angle)}
                                : new double[] {i % 4 < 2 ? 25 : -25, i % 2 == 0 ? 10 : -10};
                        Vector3D from = pupil.frame().at(rim[0], rim[1]);
                        double z = loop.get(0).getZ();
                        Vector3D crossing = corner.lerp(from, z / from.getZ());
                        least = Math.min(
                                least, -crossing.subtract(loop.get(side)).dot(sides.outward(side)));
                    }
                }
            }
            double found = new PupilRoom(pupil).of(sides, side, area);
            assertThat(found).isCloseTo(least, within(1e-4)).isLessThanOrEqualTo(least + 1e-9);
        }
        assertThat(PupilRoom.passes(sides, Vector3D.ZERO, Vector3D.of(0, 0, 200)))
                .isTrue();
        assertThat(PupilRoom.passes(sides, Vector3D.of(0, 0, 30), Vector3D.of(0, 0, 200)))
                .isFalse();
        // 11 at the lower side of the lid, 9.9 at the upper; and the other way round.
        assertThat(PupilRoom.passes(sides, Vector3D.of(33, 0, 0), Vector3D.of(0, 0, 30)))
                .isFalse();
        assertThat(PupilRoom.passes(sides, Vector3D.of(0, 29, 0), Vector3D.of(0, 0, 30)))
                .isTrue();
        assertThat(PupilRoom.passes(sides, Vector3D.of(0, -31, 0), Vector3D.of(0, 0, 30)))
                .isFalse();
        assertThat(PupilRoom.passes(sides, Vector3D.of(-31, 0, 0), Vector3D.of(0, 0, 30)))
                .isFalse();
    }

    /** For light to reach a point, as if nothing but the opening were there: the corner at (14, 0.1) needs 0.6, whatever the outline. */
    @Test
    void aGuessIsTheWayOutForTheFarthestLineToPass() {
        Scene scene = lid(60, WALL).sheet("face", 14, 19, -3, 3, 0).build(beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, opening(WALL));
        List<Face> faces = new DarknessProof(scene, TestParts.tree(scene))
                .faces(scene.surface("face").orElseThrow());
        boolean[] right = {false, true, false, false};
        // At (14, 0): 14 * 0.9 - 2 - 10; the corners at y = +-3 the same from a square pupil, at (19, y): 5.1.
        List<Double> square =
                new OpeningGuess(TestParts.pupilAt(200, Polygon.rectangle(40, 40)), sides, right).of(faces);
        assertThat(square).hasSize(8);
        assertThat(square.stream().mapToDouble(guess -> guess).min().orElseThrow())
                .isCloseTo(0.6, within(1e-9));
        assertThat(square.stream().mapToDouble(guess -> guess).max().orElseThrow())
                .isCloseTo(5.1, within(1e-9));
        List<Double> round = new OpeningGuess(TestParts.pupilAt(200, Ring.disc(20)), sides, right).of(faces);
        assertThat(round.stream().mapToDouble(guess -> guess).min().orElseThrow())
                .isCloseTo(0.6, within(1e-9));
        // Through the other side nothing comes, however far it is moved; both together need what the first needs.
        boolean[] left = {false, false, false, true};
        assertThat(new OpeningGuess(TestParts.pupilAt(200, Ring.disc(20)), sides, left).of(faces))
                .isEmpty();
        boolean[] both = {false, true, false, true};
        List<Double> two = new OpeningGuess(TestParts.pupilAt(200, Ring.disc(20)), sides, both).of(faces);
        assertThat(two.stream().mapToDouble(guess -> guess).min().orElseThrow()).isCloseTo(0.6, within(1e-9));
        // A pupil below the lid sees the face without it.
        assertThat(new OpeningGuess(TestParts.pupilAt(15, Ring.disc(20)), sides, right).of(faces))
                .isEmpty();
    }

    @Test
    void aFaceThatIsNotFlatOrTurnsOverIsNotCutAnew() {
        Scene scene = new TestParts()
                .block("b", 0, 1, 0, 1, 0, 1)
                .sheet("s", 5, 7, 5, 7, 0)
                .build(beam(Ring.disc(20)));
        Surface sheet = scene.surface("s").orElseThrow();
        double[] corners = scene.copyCorners();
        assertThat(FlatRemesh.replace(sheet, scene, corners)).isTrue();
        double[] mirrored = scene.copyCorners();
        for (int i = 9 * sheet.firstFacet(); i < 9 * (sheet.firstFacet() + 2); i += 3) {
            mirrored[i] = 12 - mirrored[i];
        }
        assertThat(FlatRemesh.replace(sheet, scene, mirrored)).isFalse();
        Surface side = scene.surface("b/+x").orElseThrow();
        Surface folded = new Surface(
                side.index(), "", side.finish(), side.firstFacet() - 1, 3, false, 1, Optional.empty(), side.place());
        assertThat(FlatRemesh.replace(folded, scene, scene.copyCorners())).isFalse();
    }
}
