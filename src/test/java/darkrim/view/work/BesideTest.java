package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.verdict.Verdict;
import darkrim.view.camera.Camera;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.parts.Stage;
import darkrim.view.parts.Stages;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class BesideTest {
    private static final Stage A = Stages.of("nightglow-a.yaml");
    private static final Stage B = Stages.of("nightglow-b.yaml");

    private static Content content(Stage stage, String requirement, Verdict verdict) {
        Facts.RequirementFact fact = new Facts.RequirementFact(requirement, verdict, "", "", "", "");
        return Content.NOTHING.with(stage).with(new Facts("", verdict, List.of(fact), Map.of(), List.of(), ""));
    }

    @Test
    void twoModelsHaveOneLookAndContentsOfTheirOwn() {
        ViewModel first = new ViewModel(Look.from(new Camera(Vector3D.ZERO, 0, 0, 10, false)));
        ViewModel second = first.beside();
        int[] told = {0};
        first.onLook(() -> told[0]++);
        second.onLook(() -> told[0]++);
        second.change(look -> look.with(Light.TOTAL));
        assertThat(first.look().light()).isEqualTo(Light.TOTAL);
        assertThat(told[0]).isEqualTo(2);
        first.undo();
        assertThat(second.look().light()).isEqualTo(Light.DIRECT);
        second.show(content -> content.with(B));
        assertThat(first.content().stage()).isEmpty();
        assertThat(first.besideContent().stage()).contains(B);
        first.show(content -> content.with(A));
        assertThat(first.stages()).containsExactly(A, B);
    }

    @Test
    void aVerdictThatChangedIsSeen() {
        List<RequirementPair> pairs =
                RequirementPair.of(content(A, "edges-dark", Verdict.PASS), content(B, "edges-dark", Verdict.FAIL));
        RequirementPair edges = named(pairs, "edges-dark");
        assertThat(edges.isChanged()).isTrue();
        assertThat(edges.before().verdict()).contains(Verdict.PASS);
        assertThat(edges.after().verdict()).contains(Verdict.FAIL);
        // Verdicts that are not there yet are no change.
        assertThat(named(pairs, "bonds-dark").isChanged()).isFalse();
        RequirementPair bevels = named(pairs, "bevels-dark");
        assertThat(bevels.before().asked()).isFalse();
        assertThat(bevels.isChanged()).isTrue();
    }

    @Test
    void aRequirementThatAsksForSomethingElseIsNotCompared() {
        Stage other = Stages.of("part-box.yaml");
        assertThat(RequirementPair.of(Content.NOTHING.with(A), Content.NOTHING.with(A)))
                .allMatch(RequirementPair::alike)
                .noneMatch(RequirementPair::isChanged);
        assertThat(RequirementPair.of(Content.NOTHING.with(A), Content.NOTHING)).isEmpty();
        assertThat(RequirementPair.of(Content.NOTHING.with(A), Content.NOTHING.with(other)))
                .filteredOn(pair -> pair.before().asked() && !pair.after().asked())
                .allMatch(RequirementPair::isChanged)
                .isNotEmpty();
    }

    @Test
    void aFaceThatOneLayoutDoesNotHaveIsSaidSo() {
        String gone = onlyIn(A, B);
        FacePair pair = FacePair.of(gone, Content.NOTHING.with(A), Content.NOTHING.with(B));
        assertThat(pair.isGone()).isTrue();
        assertThat(pair.absence()).contains("gone: nightglow-b.yaml has no face of this name");
        FacePair turned = FacePair.of(gone, Content.NOTHING.with(B), Content.NOTHING.with(A));
        assertThat(turned.isNew()).isTrue();
        assertThat(turned.absence()).contains("new: nightglow-b.yaml has no face of this name");
        assertThat(FacePair.of("none/such", Content.NOTHING.with(A), Content.NOTHING.with(B))
                        .absence())
                .contains("neither layout has a face of this name");
        // Nothing is said while a file cannot be read.
        assertThat(FacePair.of(gone, Content.NOTHING.with(A), Content.NOTHING).absence())
                .isEmpty();
    }

    private static String onlyIn(Stage one, Stage other) {
        return one.scene().surfaces().stream()
                .map(surface -> surface.name())
                .filter(name -> other.scene().surface(name).isEmpty())
                .findFirst()
                .orElseThrow();
    }

    private static RequirementPair named(List<RequirementPair> pairs, String name) {
        return pairs.stream()
                .filter(pair -> pair.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aChangeCountsOnlyBeyondItsError() {
        Reading half = new Reading(0.5, 0.01);
        // Root of 2 times 0.01 is the error of the difference; for one face 3.29 of them are 1 in 1000 (two-sided
        // normal), for 1000 faces 4.89.
        assertThat(new LightChange(half, new Reading(0.5 + 3.2 * 0.0141421, 0.01), 1).kind())
                .isEqualTo(LightChange.Kind.NO_CHANGE_SEEN);
        assertThat(new LightChange(half, new Reading(0.5 + 3.4 * 0.0141421, 0.01), 1).kind())
                .isEqualTo(LightChange.Kind.MORE);
        assertThat(new LightChange(half, new Reading(0.5 - 3.4 * 0.0141421, 0.01), 1000).kind())
                .isEqualTo(LightChange.Kind.NO_CHANGE_SEEN);
        assertThat(new LightChange(half, new Reading(0.5 - 5 * 0.0141421, 0.01), 1000).kind())
                .isEqualTo(LightChange.Kind.LESS);
        assertThat(new LightChange(half, Reading.UNKNOWN, 1).kind()).isEqualTo(LightChange.Kind.NOT_KNOWN);
        assertThat(new LightChange(Reading.NONE, Reading.NONE, 1).words()).isEqualTo("none");
    }

    @Test
    void aValueOfNoneIsTakenToBeAsUncertainAsTheOther() {
        Reading weak = new Reading(4e-6, 1e-6);
        LightChange change = new LightChange(weak, Reading.NONE, 1);
        assertThat(change.error()).isCloseTo(StrictMath.sqrt(2) * 1e-6, within(1e-15));
        assertThat(change.kind()).isEqualTo(LightChange.Kind.NO_CHANGE_SEEN);
        assertThat(new LightChange(new Reading(6e-6, 1e-6), Reading.NONE, 1).kind())
                .isEqualTo(LightChange.Kind.LESS);
    }

    /** Two samplings of one value are told apart falsely in 1 of 1000 comparisons; 3 of 200 or more with probability 0.0011, and the seed is fixed. */
    @Test
    void chanceAloneIsHardlyEverTakenForAChange() {
        SplittableRandom random = new SplittableRandom(7);
        int faces = 50;
        int wrong = 0;
        for (int trial = 0; trial < 200; trial++) {
            boolean any = false;
            for (int face = 0; face < faces; face++) {
                LightChange change = new LightChange(
                        new Reading(1 + 0.1 * random.nextGaussian(), 0.1),
                        new Reading(1 + 0.1 * random.nextGaussian(), 0.1),
                        faces);
                any |= change.kind() != LightChange.Kind.NO_CHANGE_SEEN;
            }
            wrong += any ? 1 : 0;
        }
        assertThat(wrong).isLessThan(3);
    }

    @Test
    void theChangeIsOfTheLightThatIsShown() {
        Content before = lit(A, new SurfaceFacts(new Reading(0.2, 0), new Reading(0.1, 0), List.of(), List.of()));
        Content after = lit(B, new SurfaceFacts(new Reading(0.1, 0), new Reading(0.1, 0), List.of(), List.of()));
        FacePair pair = FacePair.of("face", before, after);
        assertThat(pair.change(Light.DIRECT).kind()).isEqualTo(LightChange.Kind.LESS);
        assertThat(pair.change(Light.ONCE_REFLECTED).kind()).isEqualTo(LightChange.Kind.NO_CHANGE_SEEN);
        assertThat(pair.change(Light.TOTAL).ratio()).isCloseTo(2.0 / 3, within(1e-12));
        assertThat(pair.change(Light.DIRECT).words()).isEqualTo("less by 0.100, to 0.500 times");
    }

    private static Content lit(Stage stage, SurfaceFacts facts) {
        return new Content(
                Optional.of(stage),
                Optional.of(new Facts("", Verdict.PASS, List.of(), Map.of("face", facts), List.of(), "")),
                Map.of(),
                Map.of(),
                List.of(),
                List.of(),
                "",
                -1,
                false,
                "",
                Optional.empty());
    }
}
