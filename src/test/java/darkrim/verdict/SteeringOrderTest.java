package darkrim.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Transport;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Whose turn it is, where it is known by hand how many batches each number needs: each has one, which is doubled until it has enough. */
class SteeringOrderTest {
    private static final double RISK = 0.01;
    private static final double LIMIT = 0.5;
    private static final Scene SCENE = scene();

    private static Scene scene() {
        SceneBuilder builder = new SceneBuilder();
        for (int i = 0; i < 4; i++) {
            builder.sheet("s" + i, Finish.ABSORBER, "back" + i, Finish.ABSORBER, Place.IN_CODE)
                    .triangle("s" + i, Vector3D.of(i, 0, 0), Vector3D.of(i + 1, 0, 0), Vector3D.of(i, 1, 0));
        }
        Frame frame = Frame.of(Vector3D.of(0, 0, 100), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        return builder.build(Beam.of(new Pupil(Ring.disc(20), frame)));
    }

    private static Surface surface(int i) {
        return SCENE.surface("s" + i).orElseThrow();
    }

    private static Target target(int demand, int surface) {
        return new Target(
                demand,
                surface(surface),
                Outcome.WHOLE,
                new Requirement.AtMost(LightClass.DIRECT, LIMIT, Requirement.Per.SURFACE));
    }

    /** Known after one look, without variance: about 7 ln(3 * 2 * 3 / risk) / (3 gap) samples decide it, which are just less than so many batches. */
    private static Outcome needing(Target target, double batches, double side) {
        double gap = 7 * StrictMath.log(18 / RISK) / (3 * (batches - 0.1) * Measurements.BATCH);
        Estimate estimate = new Estimate(Measurements.BATCH, LIMIT + side * gap, 0, 1);
        return new Outcome(
                target.surface(),
                Outcome.WHOLE,
                Verdict.UNDECIDED,
                estimate.mean(),
                new Evidence.Sampled(estimate, 0, 1, RISK, 1));
    }

    private static List<String> next(Map<Target, Outcome> known, List<Target> targets, long left) {
        try (Workers workers = new Workers(1)) {
            Measurements measured = new Measurements(Transport.of(SCENE, 1), workers, Set.of(), false);
            measured.fill(
                    List.of(0, 1, 2).stream()
                            .map(i -> new Measurements.Order(surface(i), LightClass.DIRECT, 1))
                            .toList(),
                    Watch.NONE,
                    10);
            return new Steering(targets, known, measured)
                    .next(left).stream().map(order -> order.surface().name()).toList();
        }
    }

    /** For 8, 4 and 2 batches it takes 7, 3 and 1 more. */
    @Test
    void whatNeedsLeastComesFirstAndOnlyWhatTheBudgetReachesFor() {
        List<Target> targets = List.of(target(0, 0), target(1, 1), target(2, 2));
        Map<Target, Outcome> known = new HashMap<>();
        known.put(targets.get(0), needing(targets.get(0), 8, -1));
        known.put(targets.get(1), needing(targets.get(1), 4, -1));
        known.put(targets.get(2), needing(targets.get(2), 2, -1));
        assertThat(next(known, targets, 11)).containsExactly("s2", "s1", "s0");
        assertThat(next(known, targets, 10)).containsExactly("s2", "s1");
        assertThat(next(known, targets, 4)).containsExactly("s2", "s1");
        assertThat(next(known, targets, 3)).containsExactly("s2");
        assertThat(next(known, targets, 1)).containsExactly("s2");
        assertThat(next(known, targets, 0)).isEmpty();
    }

    /** What is out of reach still gets what is left, as long as that doubles it. */
    @Test
    void whatIsOutOfReachGetsWhatIsLeft() {
        List<Target> targets = List.of(target(0, 0), target(1, 1));
        Map<Target, Outcome> known = new HashMap<>();
        known.put(targets.get(0), needing(targets.get(0), 16, -1));
        known.put(targets.get(1), needing(targets.get(1), 8, -1));
        assertThat(next(known, targets, 6)).containsExactly("s1");
        assertThat(next(known, targets, 1)).containsExactly("s1");
        assertThat(next(known, targets, 0)).isEmpty();
    }

    /** Of a demand that seems to fail, the surface that shows it soonest, though it stands second; of one that seems to hold, all. */
    @Test
    void ofADemandThatSeemsToFailTheSoonestIsFollowed() {
        List<Target> targets = List.of(target(0, 0), target(0, 1), target(0, 2));
        Map<Target, Outcome> known = new HashMap<>();
        known.put(targets.get(0), needing(targets.get(0), 8, 1));
        known.put(targets.get(1), needing(targets.get(1), 2, 1));
        known.put(targets.get(2), needing(targets.get(2), 4, 1));
        assertThat(next(known, targets, 100)).containsExactly("s1");
        for (Target target : targets) {
            known.put(target, needing(target, 4, -1));
        }
        assertThat(next(known, targets, 100)).containsExactlyInAnyOrder("s0", "s1", "s2");
    }

    @Test
    void whatHasNoSamplesCannotBeDoubled() {
        List<Target> targets = List.of(target(0, 3), target(1, 1));
        Map<Target, Outcome> known = new HashMap<>();
        known.put(targets.get(0), needing(targets.get(0), 4, -1));
        known.put(targets.get(1), needing(targets.get(1), 4, -1));
        assertThat(next(known, targets, 100)).containsExactly("s1");
    }
}
