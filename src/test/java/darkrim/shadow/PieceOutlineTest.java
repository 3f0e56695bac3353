package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PieceOutlineTest {
    private static final Circle CIRCLE = new Circle(3, -2, 5, true);

    /** Closed by its chord: the arc in steps of at most a quarter turn, each from where the last one ends. */
    @ParameterizedTest
    @ValueSource(doubles = {0.4, 1.5, 1.6, 3, 4.5, 6, -0.4, -1.6, -4.5})
    void aLongArcIsCutIntoStepsThatFollowEachOther(double turn) {
        double from = 0.2;
        double to = from + turn;
        PieceOutline outline = new PieceOutline();
        outline.straight(u(to), v(to), u(from), v(from));
        outline.arc(CIRCLE, from, to);
        List<List<RimStep>> loops = outline.loops();
        assertThat(loops).hasSize(1);
        List<RimStep> loop = loops.get(0);
        int parts = (int) Math.ceil(Math.abs(turn) / (Math.PI / 2));
        assertThat(loop).hasSize(parts + 1);
        assertThat(loop.stream().filter(RimStep::isStraight)).hasSize(1);
        for (int i = 0; i < loop.size(); i++) {
            RimStep step = loop.get(i);
            RimStep next = loop.get((i + 1) % loop.size());
            assertThat(next.fromU()).isCloseTo(step.toU(), within(1e-9));
            assertThat(next.fromV()).isCloseTo(step.toV(), within(1e-9));
            if (!step.isStraight()) {
                assertThat(step.radius()).isEqualTo(5);
                assertThat(step.turn()).isCloseTo(turn / parts, within(1e-12));
                double start = Math.atan2(step.fromV() + 2, step.fromU() - 3);
                double end = Math.atan2(step.toV() + 2, step.toU() - 3);
                assertThat(Math.IEEEremainder(end - start - step.turn(), 2 * Math.PI))
                        .isCloseTo(0, within(1e-9));
                assertThat(Math.hypot(step.toU() - 3, step.toV() + 2)).isCloseTo(5, within(1e-12));
            }
        }
    }

    private static double u(double angle) {
        return 3 + 5 * Math.cos(angle);
    }

    private static double v(double angle) {
        return -2 + 5 * Math.sin(angle);
    }

    @Test
    void twoLoopsAreToldApartAndAStepAloneIsNone() {
        PieceOutline outline = new PieceOutline();
        double[][] corners = {{0, 0}, {1, 0}, {0, 1}};
        for (int i = 0; i < 3; i++) {
            double[] a = corners[i];
            double[] b = corners[(i + 1) % 3];
            outline.straight(a[0], a[1], b[0], b[1]);
            outline.straight(7 + a[0], a[1], 7 + b[0], b[1]);
        }
        outline.straight(50, 50, 51, 50);
        assertThat(outline.loops())
                .hasSize(2)
                .allSatisfy(loop -> assertThat(loop).hasSize(3));
    }
}
