package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where the focus of a star must lie to strike a slant plate over a floor: lines from the pupil through the plate, one by one. */
class StarReachTest {
    private static final double PUPIL_HEIGHT = 100;
    private static final Ring DISC = Ring.disc(12);
    private static final Finish GREY = new Finish("grey", 0.3, 0.1);

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    private static Frame frame(double height) {
        return Frame.of(at(5, -3, height), at(0.8, 0.6, 0), at(0.6, -0.8, 0));
    }

    /** A floor and a plate that leans over it and sends light by its back; its front, which looks up and away, reflects as the case says. */
    private static Scene scene(Outline outline, double height, Finish front) {
        return new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "under", GREY, Place.IN_CODE)
                .sheet("slant", front, "slant/back", GREY, Place.IN_CODE)
                .quad("floor", at(-8, -6, 0), at(9, -6, 0), at(9, 7, 0), at(-8, 7, 0))
                .quad("slant", at(12, -7, 3), at(11, 5, 4), at(20, 8, 17), at(21, -4, 16))
                .build(Beam.of(new Pupil(outline, frame(height))));
    }

    private static StarReach reach(Scene scene, double plane) {
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        return new StarReach(scene, tree, List.of(scene.surface("floor").orElseThrow()), plane);
    }

    /** The surface of the plate that looks at the floor. */
    private static Surface looking(Scene scene) {
        return scene.surfaces().stream()
                .filter(each -> each.name().startsWith("slant"))
                .filter(each -> scene.normal(each.firstFacet())
                                .multiply(each.back() ? -1 : 1)
                                .dot(at(-1, 0, 0.3))
                        > 0)
                .findFirst()
                .orElseThrow();
    }

    private static Vector2D focus(Vector3D from, Vector3D through, double plane) {
        double share = (plane - from.getZ()) / (through.getZ() - from.getZ());
        Vector3D focus = from.lerp(through, share);
        return Vector2D.of(focus.getX(), focus.getY());
    }

    /** Foci of lines from points of the pupil through points of a facet. */
    private static List<Vector2D> foci(Scene scene, int facet, double plane, int steps) {
        List<Vector2D> all = new ArrayList<>();
        double[] in = new double[2];
        Pupil pupil = scene.beam().pupil();
        for (int i = 0; i <= 2 * steps; i++) {
            for (int j = 0; j < 8 * steps; j++) {
                pupil.outline().place(i / (2.0 * steps), j / (8.0 * steps), in);
                Vector3D from = pupil.frame().at(in[0], in[1]);
                for (int k = 0; k < 3; k++) {
                    all.add(focus(from, scene.corner(facet, k), plane));
                }
                all.add(focus(
                        from,
                        scene.corner(facet, 0)
                                .multiply(0.2)
                                .add(scene.corner(facet, 1).multiply(0.3))
                                .add(scene.corner(facet, 2).multiply(0.5)),
                        plane));
            }
        }
        return all;
    }

    @ParameterizedTest
    @ValueSource(doubles = {-20, 0, 9, 40})
    void everyFocusThatStrikesThePlateIsInReachAndNoneFarBeyond(double plane) {
        Scene scene = scene(DISC, PUPIL_HEIGHT, Finish.ABSORBER);
        StarReach reach = reach(scene, plane);
        List<Vector2D> all = new ArrayList<>();
        for (StarReach.Side side : reach.sides()) {
            all.addAll(foci(scene, side.facet(), plane, 4));
        }
        assertThat(all)
                .isNotEmpty()
                .allSatisfy(at -> assertThat(
                                reach.mayLight(at.getX() - 1e-6, at.getY() - 1e-6, at.getX() + 1e-6, at.getY() + 1e-6))
                        .isTrue());
        // The polygon about the pupil is wider by 1 / cos(pi / 32), half a percent of its part in a focus.
        for (int i = 0; i < 32; i++) {
            Vector2D way = Vector2D.of(Math.cos(Math.PI * i / 16), Math.sin(Math.PI * i / 16));
            double farthest = all.stream().mapToDouble(way::dot).max().orElseThrow();
            double least = all.stream().mapToDouble(way::dot).min().orElseThrow();
            Vector2D end = all.stream()
                    .filter(each -> way.dot(each) == farthest)
                    .findFirst()
                    .orElseThrow();
            Vector2D beyond = end.add(way.multiply(0.02 * (farthest - least)));
            assertThat(reach.mayLight(beyond.getX(), beyond.getY(), beyond.getX(), beyond.getY()))
                    .isFalse();
        }
        assertThat(reach.mayLight(-1e4, -1e4, 1e4, 1e4)).isTrue();
    }

    @Test
    void onlySidesThatReflectAreStruckAndLookAtAReceiverCount() {
        Scene scene = scene(DISC, PUPIL_HEIGHT, GREY);
        Surface slant = looking(scene);
        StarReach reach = reach(scene, 0);
        assertThat(reach.sides())
                .extracting(StarReach.Side::facet)
                .containsExactlyInAnyOrder(slant.firstFacet(), slant.firstFacet() + 1);
        for (StarReach.Side side : reach.sides()) {
            Vector3D normal = scene.normal(side.facet()).multiply(slant.back() ? -1 : 1);
            assertThat(side.normal().distance(normal)).isLessThan(1e-12);
            assertThat(side.normal().dot(at(-1, 0, 0.3))).isPositive();
        }
        // Of a floor that reflects too, nothing goes to itself; and a plate that absorbs sends nothing.
        Scene absorbing = new SceneBuilder()
                .sheet("floor", GREY, "under", GREY, Place.IN_CODE)
                .sheet("slant", Finish.ABSORBER, "slant/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("floor", at(-8, -6, 0), at(9, -6, 0), at(9, 7, 0), at(-8, 7, 0))
                .quad("slant", at(12, -7, 3), at(11, 5, 4), at(20, 8, 17), at(21, -4, 16))
                .build(scene.beam());
        assertThat(reach(absorbing, 0).sides()).isEmpty();
        assertThat(reach(absorbing, 0).mayLight(-1e4, -1e4, 1e4, 1e4)).isFalse();
    }

    /** A pupil behind the plane of the plate's side that looks at the floor does not strike it. */
    @Test
    void aSideThatThePupilIsBehindIsNotStruck() {
        Scene scene = new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "under", Finish.ABSORBER, Place.IN_CODE)
                .sheet("lid", GREY, "lid/back", GREY, Place.IN_CODE)
                .quad("floor", at(-8, -6, 0), at(9, -6, 0), at(9, 7, 0), at(-8, 7, 0))
                .quad("lid", at(-8, -6, 20), at(9, -6, 21), at(9, 7, 21), at(-8, 7, 20))
                .build(Beam.of(new Pupil(DISC, frame(PUPIL_HEIGHT))));
        assertThat(reach(scene, 0).sides()).isEmpty();
    }

    /** A pupil that reaches down beside a facet, and foci above it: nothing is proved. */
    @Test
    void besideALowPupilOrAboveItEverythingIsInReach() {
        Scene low = scene(DISC, 16.5, Finish.ABSORBER);
        assertThat(reach(low, 0).mayLight(1e4, 1e4, 1e4 + 1, 1e4 + 1)).isTrue();
        Scene high = scene(DISC, PUPIL_HEIGHT, Finish.ABSORBER);
        assertThat(reach(high, PUPIL_HEIGHT).mayLight(1e4, 1e4, 1e4 + 1, 1e4 + 1))
                .isTrue();
        assertThat(reach(high, 0).mayLight(1e4, 1e4, 1e4 + 1, 1e4 + 1)).isFalse();
    }

    /** What the plate reflects where it may be struck, nothing beside; of all parts where facets exclude nothing. */
    @Test
    void noMoreIsReflectedThanWhatMayBeStruckReflects() {
        Scene scene = scene(DISC, PUPIL_HEIGHT, Finish.ABSORBER);
        StarReach reach = reach(scene, 0);
        for (Vector2D at : foci(scene, looking(scene).firstFacet(), 0, 2)) {
            assertThat(reach.mostReflected(at.getX(), at.getY())).isCloseTo(0.4, within(1e-12));
        }
        assertThat(reach.mostReflected(1e4, 0)).isZero();
        reach.excludeNothing();
        assertThat(reach.mostReflected(1e4, 0)).isCloseTo(0.4, within(1e-12));
    }
}
