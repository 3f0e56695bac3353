package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.light.FacetAims.Aim;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;

/** Stars aimed at a plate that leans over a floor. */
class FacetAimsTest {
    private static final double PUPIL_HEIGHT = 100;
    private static final Outline DISC = Ring.disc(12);
    private static final Finish GREY = new Finish("grey", 0.3, 0.1);
    private static final double ALL = Double.POSITIVE_INFINITY;

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    private static SceneBuilder parts() {
        return new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "under", GREY, Place.IN_CODE)
                .sheet("slant", Finish.ABSORBER, "slant/back", GREY, Place.IN_CODE)
                .sheet("screen", Finish.ABSORBER, "screen/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("floor", at(-8, -6, 0), at(9, -6, 0), at(9, 7, 0), at(-8, 7, 0))
                .quad("slant", at(12, -7, 3), at(11, 5, 4), at(20, 8, 17), at(21, -4, 16));
    }

    private static Scene scene(SceneBuilder parts, Outline outline) {
        Frame frame = Frame.of(at(5, -3, PUPIL_HEIGHT), at(0.8, 0.6, 0), at(0.6, -0.8, 0));
        return parts.build(Beam.of(new Pupil(outline, frame)));
    }

    private static FacetTree tree(Scene scene) {
        return FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
    }

    private static List<StarReach.Side> sides(Scene scene, double plane) {
        return new StarReach(scene, tree(scene), List.of(scene.surface("floor").orElseThrow()), plane).sides();
    }

    private static FacetAims aims(Scene scene, double plane) {
        return new FacetAims(scene, tree(scene), plane, new Envelope(-1e6, 1e6, -1e6, 1e6));
    }

    /** Where a line from a focus through a point leaves the pupil's plane. */
    private static Vector3D onPupil(Vector2D focus, Vector3D through, double plane) {
        Vector3D low = at(focus.getX(), focus.getY(), plane);
        return low.lerp(through, (PUPIL_HEIGHT - plane) / (through.getZ() - plane));
    }

    /** From a point of height z a pupil of width w and height H looks like w |z - plane| / (H - z) in the plane; the least of the three corners. */
    @Test
    void theNarrowestBandIsThatOfTheCornerNearestToThePlane() {
        for (Outline outline : List.of(DISC, Polygon.rectangle(18, 50))) {
            double width = outline.equals(DISC) ? 24 : 18;
            for (double plane : new double[] {-20, 30}) {
                Scene scene = scene(parts(), outline);
                assertThat(sides(scene, plane)).hasSize(2);
                for (StarReach.Side side : sides(scene, plane)) {
                    double least = IntStream.range(0, 3)
                            .mapToDouble(k -> scene.corner(side.facet(), k).getZ())
                            .map(z -> width * Math.abs(z - plane) / (PUPIL_HEIGHT - z))
                            .min()
                            .orElseThrow();
                    assertThat(aims(scene, plane).narrowest(side)).isCloseTo(least, within(1e-9));
                    assertThat(aims(scene, 10).narrowest(side)).isZero();
                }
            }
        }
    }

    @Test
    void eachPieceIsAimedAtThroughFourPointsOfThePupilTheSteepestFirst() {
        double plane = -20;
        Scene scene = scene(parts(), DISC);
        Vector3D middle = scene.beam().pupil().frame().origin();
        for (StarReach.Side side : sides(scene, plane)) {
            FacetPiece whole = new FacetPiece(
                    scene.corner(side.facet(), 0), scene.corner(side.facet(), 1), scene.corner(side.facet(), 2));
            List<FacetPiece> pieces = whole.pieces(6, each -> each, any -> true);
            List<Aim> found = aims(scene, plane).of(side, 6, ALL, ALL);
            assertThat(pieces).hasSizeGreaterThan(3);
            assertThat(found).hasSize(4 * pieces.size()).doesNotHaveDuplicates().allMatch(Aim::seen);
            for (int i = 0; i < found.size(); i++) {
                assertThat(found.get(i).rank()).isEqualTo(i % 4);
                Vector3D from = onPupil(found.get(i).focus(), pieces.get(i / 4).middle(), plane);
                Vector3D steepest =
                        onPupil(found.get(i - i % 4).focus(), pieces.get(i / 4).middle(), plane);
                assertThat(from.distance(middle)).isLessThan(12);
                assertThat(from.subtract(whole.a()).dot(side.normal())).isPositive();
                assertThat(from.dot(side.normal())).isLessThanOrEqualTo(steepest.dot(side.normal()) + 1e-9);
            }
        }
    }

    /** A screen that hides all of the pupil from which rays to the plate cross it at x below 13 mm. */
    @Test
    void aPieceIsAimedAtThroughPointsThatSeeIt() {
        double plane = 0;
        double height = 90;
        Scene scene =
                scene(parts().quad("screen", at(-20, -30, 90), at(13, -30, 90), at(13, 30, 90), at(-20, 30, 90)), DISC);
        int seen = 0;
        for (StarReach.Side side : sides(scene, plane)) {
            FacetPiece whole = new FacetPiece(
                    scene.corner(side.facet(), 0), scene.corner(side.facet(), 1), scene.corner(side.facet(), 2));
            List<FacetPiece> pieces = whole.pieces(3, each -> each, any -> true);
            int piece = -1;
            for (Aim aim : aims(scene, plane).of(side, 3, ALL, ALL)) {
                piece += aim.rank() == 0 ? 1 : 0;
                Vector3D middle = pieces.get(piece).middle();
                Vector3D from = onPupil(aim.focus(), middle, plane);
                double x = from.lerp(middle, (PUPIL_HEIGHT - height) / (PUPIL_HEIGHT - middle.getZ()))
                        .getX();
                assertThat(x > 13).isEqualTo(aim.seen());
                seen += aim.seen() ? 1 : 0;
            }
            assertThat(piece).isEqualTo(pieces.size() - 1);
        }
        assertThat(seen).isPositive();
        Scene closed =
                scene(parts().quad("screen", at(-40, -40, 90), at(40, -40, 90), at(40, 40, 90), at(-40, 40, 90)), DISC);
        for (StarReach.Side side : sides(closed, plane)) {
            List<Aim> found = aims(closed, plane).of(side, 100, ALL, ALL);
            assertThat(found).hasSize(2).noneMatch(Aim::seen);
        }
    }

    /** Through one point of the pupil foci follow each other by a step, and only where bands are narrow. */
    @Test
    void narrowBandsAreAimedAtAllAlong() {
        double plane = 2.9;
        Scene scene = scene(parts(), DISC);
        double widest = 0.5;
        int found = 0;
        for (StarReach.Side side : sides(scene, plane)) {
            List<Aim> all = aims(scene, plane).of(side, 2, 0.1, widest);
            found += all.size();
            assertThat(all).allMatch(aim -> aim.band() < 2 * widest);
            List<Vector2D> first =
                    all.stream().filter(aim -> aim.rank() == 0).map(Aim::focus).toList();
            for (Vector2D one : first) {
                assertThat(first).anyMatch(two -> !two.equals(one) && two.distance(one) < 0.1);
            }
        }
        assertThat(found).isPositive();
    }

    @Test
    void whatNoWantedFocusStrikesIsLeftOut() {
        Scene scene = scene(parts(), DISC);
        StarReach.Side side = sides(scene, 0).get(0);
        List<Aim> all = aims(scene, 0).of(side, 1, ALL, ALL);
        Vector2D at = all.get(all.size() / 2).focus();
        Envelope near = new Envelope(at.getX() - 0.1, at.getX() + 0.1, at.getY() - 0.1, at.getY() + 0.1);
        List<Aim> some = new FacetAims(scene, tree(scene), 0, near).of(side, 1, ALL, ALL);
        assertThat(some).hasSizeLessThan(all.size()).isSubsetOf(all);
        for (Aim aim : all) {
            if (near.contains(aim.focus().getX(), aim.focus().getY())) {
                assertThat(some).contains(aim);
            }
        }
    }

    @Test
    void thereIsNoneFromBehindASideNorFromBelowTheFoci() {
        Scene scene = scene(parts(), DISC);
        StarReach.Side side = sides(scene, 0).get(0);
        StarReach.Side turned = new StarReach.Side(
                side.facet(), side.surface(), side.plane(), side.normal().negate());
        assertThat(aims(scene, 0).of(turned, 1, ALL, ALL)).isEmpty();
        assertThat(aims(scene, PUPIL_HEIGHT).of(side, 100, ALL, ALL)).isEmpty();
    }
}
