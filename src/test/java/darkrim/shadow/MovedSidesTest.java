package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.assembly.Opening;
import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Sides of an opening that are moved, the room that lines leave beside them, and guesses of how far they may go. */
class MovedSidesTest {
    @Test
    void cornersSlideAlongTheSidesThatStay() {
        Scene scene = OpenLid.lid(60, OpenLid.WALL).build(OpenLid.beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, OpenLid.opening(OpenLid.WALL));
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
        Scene scene = OpenLid.lid(60, OpenLid.WALL).build(OpenLid.beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, OpenLid.opening(OpenLid.WALL));
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
        Scene scene = OpenLid.lid(60, OpenLid.WALL)
                .block("post", 10, 11, 10, 11, 10, 20)
                .build(OpenLid.beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, OpenLid.opening(OpenLid.WALL));
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
        Scene scene = OpenLid.lid(60, OpenLid.WALL).build(OpenLid.beam(Ring.disc(20)));
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

    /** Against the greatest of many lines; the pupil is tilted against the plate, so that its farthest point is not plain. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void noLineOfATiltedPupilPassesNearerToASideThanItsRoom(boolean round) {
        Scene scene = OpenLid.lid(60, OpenLid.WALL).build(OpenLid.beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, OpenLid.opening(OpenLid.WALL));
        Outline outline = round ? Ring.disc(20) : Polygon.rectangle(50, 20);
        Pupil pupil = new Pupil(
                outline, Frame.of(Vector3D.of(15, -8, 90), Vector3D.of(0.8, 0.2, 0.5), Vector3D.of(-0.1, -1, 0.3)));
        List<Vector3D> area = OpenLid.die(4).active();
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
        Scene scene =
                OpenLid.lid(60, OpenLid.WALL).sheet("face", 14, 19, -3, 3, 0).build(OpenLid.beam(Ring.disc(20)));
        MovedSides sides = new MovedSides(scene, OpenLid.opening(OpenLid.WALL));
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
                .build(OpenLid.beam(Ring.disc(20)));
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
