package darkrim.study.vanes;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Shape.Toward;
import darkrim.layout.VanesShape.Taper;
import darkrim.reference.ReferenceCases;
import darkrim.shadow.LitAndSeen;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The proof holds for vanes as constructed, with a clearance, and breaks when any one is taken away. */
class VaneProofTest {
    private static final VaneForm FORM = new VaneForm("vanes", 0.5, 0.05, 45, Toward.PUPIL, 1, 0.01);

    private static VaneTask tube(String reference, double clearance) {
        var each = ReferenceCases.byId(reference);
        double wall = each.parameter("Rw");
        double edge = each.parameter("Rv");
        return new VaneTask(
                new Taper(wall, wall),
                new Taper(edge, edge),
                0,
                each.parameter("L"),
                each.parameter("rd"),
                each.parameter("Re"),
                OptionalDouble.of(each.parameter("thetaDeg")),
                OptionalDouble.empty(),
                clearance);
    }

    private static final VaneTask CONE = new VaneTask(
            new Taper(20, 45), new Taper(15, 38), 0, 220, 8, 36, OptionalDouble.of(25), OptionalDouble.empty(), 0.05);

    private static void holdsAndNeedsEveryVane(VaneTask task) throws UnusableInput {
        List<Double> heights = VaneConstruction.of(task).heights();
        VaneProof proof = VaneProof.of(new VaneText(task, FORM, heights));
        assertThat(proof.walls()).hasSize(heights.size() + 1);
        assertThat(proof.walls()).allMatch(answer -> answer.found() instanceof LitAndSeen.Apart);
        assertThat(proof.holds()).isTrue();
        assertThat(proof.mismatch()).isLessThan(1e-11);
        for (int i = 0; i < heights.size(); i++) {
            List<Double> without = new ArrayList<>(heights);
            without.remove(i);
            VaneProof broken = VaneProof.of(new VaneText(task, FORM, without));
            assertThat(broken.fails()).as("without vane " + (i + 1)).isTrue();
            assertThat(broken.holds()).isFalse();
        }
    }

    @Test
    void aTubeOfTheReferenceIsProvedWithClearance() throws UnusableInput {
        holdsAndNeedsEveryVane(tube("H01a", 0.05));
    }

    @Test
    void aWiderTubeOfTheReferenceIsProvedWithClearance() throws UnusableInput {
        holdsAndNeedsEveryVane(tube("H01b", 0.05));
    }

    @Test
    void aConeIsProvedWithClearance() throws UnusableInput {
        holdsAndNeedsEveryVane(CONE);
    }
}
