package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Ring;
import darkrim.light.RandomScenes;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;

/** A proof that is asked to stop gives up at once, and what it then says is weaker, never wrong. */
class StoppedProofTest {
    /** Asks to stop from some question on, and counts how often it is asked after that. */
    private static final class From implements BooleanSupplier {
        private final int question;
        private final AtomicInteger asked = new AtomicInteger();

        private From(int question) {
            this.question = question;
        }

        @Override
        public boolean getAsBoolean() {
            return asked.incrementAndGet() >= question;
        }

        private boolean rang() {
            return asked.get() >= question;
        }
    }

    /** A face behind a slit in a plate: neither wholly lit nor dark. */
    private static final Scene SLIT = new TestParts()
            .sheet("left", -40, -1, -40, 40, 30)
            .sheet("right", 1, 40, -40, 40, 30)
            .sheet("face", -3, 3, -3, 3, 0)
            .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));

    private static Surface face() {
        return SLIT.surface("face").orElseThrow();
    }

    @Test
    void theShareOfThePupilIsBoundedFromOnePointWhenItIsStoppedAtOnce() {
        FacetTree tree = TestParts.tree(SLIT);
        LeastShare.Bracket whole = new LeastShare(SLIT, tree).against(face(), 0.5, () -> false);
        for (int question = 1; question < 40; question++) {
            From stop = new From(question);
            LeastShare.Bracket stopped = new LeastShare(SLIT, tree).against(face(), 0.5, stop);
            assertThat(stopped.atLeast()).as("question %d", question).isBetween(0.0, whole.atMost());
            assertThat(stopped.atMost()).as("question %d", question).isBetween(whole.atLeast(), 1.0);
            // After the first yes it asks a few times on its way out, not once for each point and pair.
            assertThat(stop.asked.get()).as("question %d", question).isLessThan(question + 12);
        }
    }

    @Test
    void theWholePupilIsNotProvedOnceItIsStopped() {
        Scene open = new TestParts()
                .sheet("beside", 30, 40, -40, 40, 30)
                .sheet("face", -3, 3, -3, 3, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
        Surface face = open.surface("face").orElseThrow();
        FacetTree tree = TestParts.tree(open);
        ProofSettings settings = ProofSettings.DEFAULT;
        assertThat(new FullyLitProof(open, tree, settings).of(face).proved()).isTrue();
        assertThat(new FullyLitProof(open, tree, settings, () -> true).of(face)).satisfies(found -> {
            assertThat(found.proved()).isFalse();
            assertThat(found.openFraction()).isEqualTo(1);
        });
    }

    @Test
    void aStoppedBoundOfReflectedLightIsNeverBelowTheWholeOne() {
        int compared = 0;
        for (long seed = 1; seed <= 4; seed++) {
            Scene scene = new RandomScenes(seed).open(3);
            FacetTree tree = TestParts.tree(scene);
            Surface receiver = scene.surfaces().get(0);
            double whole = new ReflectedBound(scene, tree, Set.of()).of(receiver);
            for (int question = 1; question < 4_000; question = 2 * question + 1) {
                From stop = new From(question);
                double stopped = new ReflectedBound(scene, tree, Set.of(), stop).of(receiver);
                assertThat(stopped).as("seed %d, question %d", seed, question).isGreaterThanOrEqualTo(whole);
                assertThat(stop.asked.get()).isLessThan(question + 300);
                compared += stop.rang() ? 1 : 0;
            }
            assertThat(new ReflectedBound(scene, tree, Set.of(), () -> true).of(receiver))
                    .as("not one piece was looked at")
                    .isInfinite();
        }
        assertThat(compared).isGreaterThan(20);
    }

    /** Half a margin is none: what was found when the proofs gave up is thrown away, whole ones are the same as without a stop. */
    @Test
    void aStoppedMarginIsNone() {
        Scene hidden = new TestParts()
                .sheet("lid", -12, 12, -12, 12, 30)
                .sheet("face", -3, 3, -3, 3, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
        int thrownAway = 0;
        for (Scene scene : List.of(hidden, SLIT)) {
            FacetTree tree = TestParts.tree(scene);
            List<Surface> faces = List.of(scene.surface("face").orElseThrow());
            BiFunction<Margins, BooleanSupplier, Optional<Margins.Least>> search = scene == SLIT
                    ? (margins, stop) -> margins.deepestIntrusion(faces, stop)
                    : (margins, stop) -> margins.leastClearance(faces, stop);
            Optional<Margins.Least> whole = search.apply(new Margins(scene, tree), () -> false);
            assertThat(whole).isPresent();
            for (int question = 1; question < 100_000; question = 2 * question + 1) {
                From stop = new From(question);
                Optional<Margins.Least> stopped = search.apply(new Margins(scene, tree, stop), stop);
                if (stop.rang()) {
                    thrownAway++;
                    assertThat(stopped).as("question %d", question).isEmpty();
                    // Each further proof of the search asks a few times, and finds out.
                    assertThat(stop.asked.get()).as("question %d", question).isLessThan(question + 1_000);
                } else {
                    assertThat(stopped).as("question %d", question).isEqualTo(whole);
                }
            }
        }
        assertThat(thrownAway).isGreaterThan(10);
    }

    @Test
    void aProofOfDarknessLeavesAllOpenWhenItIsStoppedAtOnce() {
        Scene hidden = new TestParts()
                .sheet("lid", -80, 80, -80, 80, 30)
                .sheet("face", -3, 3, -3, 3, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
        Surface face = hidden.surface("face").orElseThrow();
        FacetTree tree = TestParts.tree(hidden);
        assertThat(new DarknessProof(hidden, tree).of(face)).isInstanceOf(Darkness.Dark.class);
        assertThat(new DarknessProof(hidden, tree, ProofSettings.DEFAULT, () -> true).of(face))
                .isInstanceOfSatisfying(
                        Darkness.Undecided.class,
                        open -> assertThat(open.openFraction()).isEqualTo(1));
    }
}
