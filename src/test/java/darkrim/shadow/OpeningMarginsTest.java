package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.assembly.Die;
import darkrim.assembly.Opening;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Scene;
import darkrim.shadow.OpeningMargin.Extent;
import darkrim.shadow.OpeningMargin.Room;
import java.util.ArrayList;
import java.util.List;
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
                        List.of(dies),
                        () -> false)
                .of(opening);
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
        Scene scene = OpenLid.lid(60, OpenLid.WALL)
                .sheet("face", 14, 19, -3, 3, 0)
                .build(OpenLid.beam(round ? Ring.disc(20) : Polygon.rectangle(40, 40)));
        List<OpeningMargin> found = margins(scene, OpenLid.opening(OpenLid.WALL), List.of("face"), List.of());
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
        Scene scene = OpenLid.lid(60, OpenLid.WALL)
                .sheet("face", 14, 16, 15, 17, 0)
                .build(OpenLid.beam(Polygon.rectangle(40, 40)));
        List<OpeningMargin> found = margins(scene, OpenLid.opening(OpenLid.WALL), List.of("face"), List.of());
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
        Scene scene = OpenLid.lid(60, steps).sheet("face", 14, 19, -3, 3, 0).build(OpenLid.beam(Ring.disc(20)));
        List<OpeningMargin> found = margins(scene, OpenLid.opening(steps), List.of("face"), List.of());
        double edge = 14 - 34 * 20.5 / 200;
        assertThat(side(found, "+x").outward().orElseThrow().millimetres()).isCloseTo(edge - 10, within(2e-6));
    }

    @Test
    void whatIsLitIsCuredByMovingTheSideIn() {
        // From x = 13 on: 13 * 0.9 - 2 = 9.7.
        Scene scene =
                OpenLid.lid(60, OpenLid.WALL).sheet("face", 13, 18, -3, 3, 0).build(OpenLid.beam(Ring.disc(20)));
        List<OpeningMargin> found = margins(scene, OpenLid.opening(OpenLid.WALL), List.of(), List.of("face"));
        Room room = side(found, "+x").outward().orElseThrow();
        assertThat(room.millimetres()).isCloseTo(-0.3, within(2e-6)).isLessThanOrEqualTo(-0.3);
        assertThat(room.surface()).isEqualTo("face");
        assertThat(side(found, "-x").outward()).isEmpty();
        // What this side does not light it cannot cure: a face at the middle sees the pupil whatever the side does.
        Scene middle =
                OpenLid.lid(60, OpenLid.WALL).sheet("face", -1, 1, -1, 1, 0).build(OpenLid.beam(Ring.disc(20)));
        assertThat(side(margins(middle, OpenLid.opening(OpenLid.WALL), List.of(), List.of("face")), "+x")
                        .outward())
                .isEmpty();
    }

    @Test
    void theNearestOfSeveralFacesSetsTheRoom() {
        Scene scene = OpenLid.lid(60, OpenLid.WALL)
                .sheet("far", 16, 19, -3, 3, 0)
                .sheet("near", 14, 15, -3, 3, 0)
                .sheet("other", 17, 19, 4, 6, 0)
                .build(OpenLid.beam(Ring.disc(20)));
        Room room = side(
                        margins(scene, OpenLid.opening(OpenLid.WALL), List.of("far", "near", "other"), List.of()), "+x")
                .outward()
                .orElseThrow();
        assertThat(room.surface()).isEqualTo("near");
        assertThat(room.millimetres()).isCloseTo(0.6, within(2e-6));
    }

    /** A screen stands between the opening and the face: nothing comes however far the side is moved. */
    @Test
    void aSideThatBringsNoLightAsFarAsItIsMovedHasAtLeastThat() {
        Scene scene = OpenLid.lid(60, OpenLid.WALL)
                .sheet("face", 14, 15, -3, 3, 0)
                .sheet("screen", -9, 40, -30, 30, 2)
                .build(OpenLid.beam(Ring.disc(20)));
        Room room = side(margins(scene, OpenLid.opening(OpenLid.WALL), List.of("face"), List.of()), "+x")
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
        Scene scene = OpenLid.lid(60, OpenLid.WALL)
                .sheet("face", 14, 19, -3, 3, 0)
                .sheet("strip", 12, 14.6, -30, 30, 2)
                .build(OpenLid.beam(Polygon.rectangle(40, 40)));
        Room room = side(margins(scene, OpenLid.opening(OpenLid.WALL), List.of("face"), List.of()), "+x")
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
        Scene scene = OpenLid.lid(12.5, OpenLid.WALL)
                .sheet("face", 14, 15, -3, 3, 0)
                .sheet("screen", -40, 40, -40, 40, 2)
                .build(OpenLid.beam(Ring.disc(20)));
        List<OpeningMargin> found = margins(scene, OpenLid.opening(OpenLid.WALL), List.of("face"), List.of());
        assertThat(side(found, "+x").outward().orElseThrow().millimetres()).isEqualTo(2);
    }

    /** Lines from the rim of the active area to that of the pupil pass the lid's upper side at v + (20 - v) 0.105. */
    @ParameterizedTest
    @CsvSource({"3, true", "3, false", "9, true", "9, false"})
    void aSideCanBeMovedInUntilADetectorLosesPartOfThePupil(double half, boolean round) {
        Scene scene = OpenLid.lid(60, OpenLid.WALL)
                .sheet("face", 40, 41, -3, 3, 0)
                .build(OpenLid.beam(round ? Ring.disc(20) : Polygon.rectangle(40, 40)));
        List<OpeningMargin> found =
                margins(scene, OpenLid.opening(OpenLid.WALL), List.of(), List.of(), OpenLid.die(half));
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
        Scene scene =
                OpenLid.lid(60, OpenLid.WALL).sheet("face", 40, 41, -3, 3, 0).build(OpenLid.beam(Ring.disc(20)));
        Die die = new Die("die", TestParts.NOWHERE, active, active, active);
        Die elsewhere = new Die(
                "elsewhere",
                TestParts.NOWHERE,
                active.stream().map(corner -> corner.add(Vector3D.of(30, 0, 0))).toList(),
                active,
                active);
        List<OpeningMargin> found = margins(scene, OpenLid.opening(OpenLid.WALL), List.of(), List.of(), elsewhere, die);
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
        List<Vector3D> dent = new ArrayList<>(OpenLid.loop(OpenLid.SQUARE, OpenLid.WALL[0]));
        dent.add(Vector3D.of(-2, 0, 21));
        Opening bent = new Opening(
                "lid/opening[0]", TestParts.NOWHERE, List.of("a", "b", "c", "d", "e"), dent, dent, dent, dent);
        Scene scene =
                OpenLid.lid(60, OpenLid.WALL).sheet("face", 14, 19, -3, 3, 0).build(OpenLid.beam(Ring.disc(20)));
        assertThat(margins(scene, bent, List.of("face"), List.of())).isEmpty();
        OpeningMargins margins = new OpeningMargins(
                scene,
                TestParts.tree(scene),
                List.of(scene.surface("face").orElseThrow()),
                List.of(),
                List.of(),
                () -> true);
        assertThat(margins.of(OpenLid.opening(OpenLid.WALL))).isEmpty();
    }

    /** Light comes around the outer rim of the plate as well, at 25: from x = 25.56 on. The side alone makes no such face dark. */
    @Test
    void aFaceThatIsLitElsewhereTooIsNotCuredByTheSide() {
        Scene scene = OpenLid.lid(25, OpenLid.WALL)
                .sheet("both", 13, 27, -3, 3, 0)
                .sheet("one", 13.2, 20, 4, 5, 0)
                .build(OpenLid.beam(Ring.disc(20)));
        assertThat(side(margins(scene, OpenLid.opening(OpenLid.WALL), List.of(), List.of("both")), "+x")
                        .outward())
                .isEmpty();
        Room room = side(margins(scene, OpenLid.opening(OpenLid.WALL), List.of(), List.of("both", "one")), "+x")
                .outward()
                .orElseThrow();
        assertThat(room.surface()).isEqualTo("one");
        // Not by the far rim itself, for the face lies aside of the axis: between 13.2 and what that would need.
        assertThat(room.millimetres()).isBetween(13.2 * 0.9 - 2 - 10 - 1e-6, 0.0);
    }
}
