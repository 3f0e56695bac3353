package darkrim.light;

import static darkrim.light.CornerScene.FACING;
import static darkrim.light.CornerScene.LEFT;
import static darkrim.light.CornerScene.POINT;
import static darkrim.light.CornerScene.RIGHT;
import static darkrim.light.CornerScene.SCENE;
import static darkrim.light.CornerScene.TREE;
import static darkrim.light.CornerScene.agree;
import static darkrim.light.CornerScene.floor;
import static darkrim.light.CornerScene.steps;
import static darkrim.light.CornerScene.sums;
import static darkrim.light.HemisphereBundles.BUNDLES;
import static darkrim.light.HemisphereBundles.mean;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.light.PlateSums.Element;
import darkrim.light.PlateSums.Step;
import darkrim.light.Reflector.Part;
import darkrim.scene.Warmth;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Warm light among the tilted walls of the {@link CornerScene}, against plain sums. */
class CornerWarmthTest {
    private static final double[] EMITTED = IntStream.rangeClosed(0, 100)
            .mapToDouble(i -> 1 - LEFT.reflection().reflectance(i / 100.0))
            .toArray();

    private static int number(String name) {
        return SCENE.surface(name).orElseThrow().index();
    }

    private static List<HemisphereTally> look(Warmth warmth) {
        HemisphereView view = new HemisphereView(SCENE, TREE, Optional.of(warmth), 3);
        return IntStream.range(0, BUNDLES)
                .mapToObj(i -> view.batch("point", POINT, FACING, i, 40))
                .toList();
    }

    private static Warmth warm(double left, double right, double floor, double pupil) {
        return new Warmth(
                SCENE,
                surface -> switch (surface.name()) {
                    case "left" -> left;
                    case "right" -> right;
                    default -> floor;
                },
                surface -> Double.POSITIVE_INFINITY,
                Warmth.Emitter.NONE,
                new Warmth.Emitter(pupil, 0.5),
                1,
                5.3);
    }

    /** Only the pupil is warm: what the left wall throws on to the point comes straight from it, or by way of the right wall. */
    @Test
    void warmLightOfThePupilComesByEachWallAsTheSumsSay() {
        Warmth warmth = warm(0, 0, 0, 300);
        List<HemisphereTally> found = look(warmth);
        PlateSums sums = sums(6, false);
        for (PlateSums.Plate last : List.of(LEFT, RIGHT)) {
            double expected = 0;
            for (Step step : steps().filter(each -> each.plate().equals(last)).toList()) {
                expected += sums.irradiance(POINT, FACING, step);
                for (Step first :
                        steps().filter(each -> !each.plate().equals(last)).toList()) {
                    expected += sums.irradiance(POINT, FACING, step, first);
                }
            }
            int number = number(last.name());
            Estimate photons = mean(found, bundle -> bundle.reflectedPhotons(number));
            Estimate watts = mean(found, bundle -> bundle.reflectedWatts(number));
            double share = expected / Math.PI;
            // Three and more reflections add a part that the sums leave out: what two add, times as much again, at
            // most.
            assertThat(photons.mean() / warmth.pupilPhotons())
                    .isBetween(
                            0.98 * share - 7 * photons.standardError() / warmth.pupilPhotons(),
                            1.1 * share + 7 * photons.standardError() / warmth.pupilPhotons());
            assertThat(photons.standardError()).isLessThan(0.15 * photons.mean());
            assertThat(watts.mean() / warmth.pupilWatts())
                    .isCloseTo(photons.mean() / warmth.pupilPhotons(), within(1e-9 * share));
        }
    }

    /** What the left wall emits at a cosine, of what a black body does: all that it does not reflect, between every hundredth of the cosine. */
    private static double emitted(double cosine) {
        int below = Math.min(99, (int) (100 * cosine));
        return EMITTED[below] + (100 * cosine - below) * (EMITTED[below + 1] - EMITTED[below]);
    }

    /** Only the left wall is warm. */
    @Test
    void aWarmWallSendsWhatItDoesNotReflect() {
        Warmth warmth = warm(250, 0, 0, 0);
        List<HemisphereTally> found = look(warmth);
        double expected = 0;
        for (Element piece : LEFT.elements(30)) {
            Vector3D way = piece.at().subtract(POINT);
            double out = -way.normalize().dot(piece.normal());
            double share = way.normalize().dot(FACING) * out * piece.area() / way.normSq() / Math.PI;
            expected += share * emitted(out);
        }
        int left = number("left");
        Estimate photons = mean(found, bundle -> bundle.photons(left) / warmth.photons(left));
        agree("emitted", photons, expected, 0.02);
        Estimate watts = mean(found, bundle -> bundle.watts(left) / warmth.watts(left));
        assertThat(watts.mean()).isCloseTo(photons.mean(), within(1e-9));
        // And by the right wall comes what the left one sends to it.
        double byRight = 0;
        for (Step step : steps().filter(each -> each.plate().equals(RIGHT)).toList()) {
            for (Element piece : RIGHT.elements(12)) {
                Vector3D back = POINT.subtract(piece.at()).normalize();
                double out = back.dot(piece.normal());
                for (Element from : LEFT.elements(12)) {
                    Vector3D way = from.at().subtract(piece.at());
                    Vector3D light = way.normalize();
                    double in = light.dot(piece.normal());
                    double leaving = -light.dot(from.normal());
                    double brdf = step.part() == Part.LOBE
                            ? RIGHT.reflection().lobe(in, out, light.dot(back))
                            : RIGHT.reflection().broad(in, out) / Math.PI;
                    byRight += brdf
                            * in
                            * leaving
                            * emitted(leaving)
                            * from.area()
                            / way.normSq()
                            * -back.dot(FACING)
                            * out
                            * piece.area()
                            / POINT.subtract(piece.at()).normSq()
                            / Math.PI;
                }
            }
        }
        int right = number("right");
        Estimate reflected = mean(found, bundle -> bundle.reflectedPhotons(right) / warmth.photons(left));
        assertThat(reflected.mean())
                .isBetween(
                        0.98 * byRight - 7 * reflected.standardError(), 1.1 * byRight + 7 * reflected.standardError());
        assertThat(reflected.standardError()).isLessThan(0.08 * byRight);
    }
}
