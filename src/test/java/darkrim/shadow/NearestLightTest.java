package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a clearance is said to be set by is what moves it: each edge is moved by 0.01 mm, and the clearance found anew. */
class NearestLightTest {
    private static final double STEP = 0.01;
    private static final double HEIGHT = 200;
    private static final List<String> SIDES = List.of("-x", "+x", "-y", "+y");

    /** How far each side of the opening and of the die lies from the axis, in the order of SIDES, mm. */
    private static Scene dieBehindLid(double[] opening, double[] die) {
        return new TestParts()
                .plate(
                        "lid",
                        new double[] {-30, 30, -30, 30},
                        List.of(new double[] {-opening[0], opening[1], -opening[2], opening[3]}),
                        new double[][] {{2, 0}, {1.95, 0}, {1.2, 0.43}})
                .block("die", -die[0], die[1], -die[2], die[3], -0.2, 0)
                .build(Beam.of(TestParts.pupilAt(HEIGHT, Ring.disc(15))));
    }

    private static Margin clearance(Scene scene, String surface) {
        return TestParts.margins(scene).clearance(scene.surface(surface).orElseThrow());
    }

    private static double[] all(double distance) {
        return new double[] {distance, distance, distance, distance};
    }

    private static double[] moved(double[] sides, int side) {
        double[] moved = sides.clone();
        moved[side] += STEP;
        return moved;
    }

    /** Light comes to the side of a die from above its edge at the steepest: the clearance is what the opening lies farther in than the die. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void theSideOfAnOpeningAboveTheSideOfADieIsNamed(int side) {
        double[] opening = all(4.4);
        opening[side] = 4.7;
        double[] die = all(5);
        String face = "die/" + SIDES.get(side);
        Margin found = clearance(dieBehindLid(opening, die), face);
        assertThat(found.millimetres()).isCloseTo(0.3, within(1e-6));
        assertThat(found.setBy())
                .startsWith("lid/")
                .contains("lid/opening[0]/step[")
                .endsWith("/" + SIDES.get(side));
        for (int i = 0; i < 4; i++) {
            double follows = i == side ? STEP : 0;
            assertThat(clearance(dieBehindLid(moved(opening, i), die), face).millimetres())
                    .as("side %s of the opening", SIDES.get(i))
                    .isCloseTo(0.3 - follows, within(1e-6));
        }
    }

    private static Scene stripBelowDie(double edge, double opening) {
        return new TestParts()
                .sheet("lid", opening, 60, -60, 60, 2)
                .block("die", -30, edge, -30, 30, -0.2, 0)
                .sheet("strip", 2, 4, -1, 1, -1)
                .build(Beam.of(TestParts.pupilAt(HEIGHT, Ring.disc(15))));
    }

    /**
     * Light from the rim of the pupil at x = 15 passes the lower edge of the die at x = 5 and runs on below it: its line is that far from the end of
     * the strip at (4, -1).
     */
    @Test
    void theEdgeOfADieThatShadesWhatLiesBelowItIsNamed() {
        for (double edge : new double[] {5, 5 + STEP}) {
            double wayX = 15 - edge;
            double wayZ = HEIGHT + 0.2;
            double expected = (wayZ * (edge - 4) - wayX * (-0.2 + 1)) / Math.hypot(wayX, wayZ);
            Margin found = clearance(stripBelowDie(edge, 8), "strip");
            assertThat(found.millimetres()).isCloseTo(expected, within(1e-6));
            assertThat(found.setBy()).isEqualTo("die/+x, die/-z");
            assertThat(clearance(stripBelowDie(edge, 8 + STEP), "strip").millimetres())
                    .isCloseTo(expected, within(1e-6));
        }
    }

    /** Straight up through the lid lies light sooner than sideways under the opening. */
    @Test
    void aSurfaceOnWhichLightAlreadyLiesIsNamed() {
        for (double top : new double[] {2, 2 + STEP}) {
            Scene scene = new TestParts()
                    .plate(
                            "lid",
                            new double[] {-30, 30, -30, 30},
                            List.of(new double[] {-5, 5, -5, 5}),
                            new double[][] {{top, 0}, {1, 0}})
                    .sheet("strip", 9, 10, -1, 1, 0.5)
                    .build(Beam.of(TestParts.pupilAt(HEIGHT, Ring.disc(15))));
            Margin found = clearance(scene, "strip");
            assertThat(found.millimetres()).isCloseTo(top - 0.5, within(2e-6));
            assertThat(found.setBy()).isEqualTo("lid/+z");
        }
    }
}
