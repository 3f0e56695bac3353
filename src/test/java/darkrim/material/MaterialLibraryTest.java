package darkrim.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws that hold for every material. */
class MaterialLibraryTest {
    static Stream<String> names() {
        return MaterialLibrary.names().stream();
    }

    private static Contraction of(String name) {
        return MaterialLibrary.of(name).orElseThrow().contraction();
    }

    @ParameterizedTest
    @MethodSource("names")
    void aWayBackAndForthIsNoWay(String name) {
        Contraction contraction = MaterialLibrary.of(name).orElseThrow().contraction();
        double there = contraction.between(290, 77);
        double back = contraction.between(77, 290);
        assertThat((1 - there) * (1 - back)).isCloseTo(1, within(1e-15));
        assertThat(contraction.between(77, 77)).isZero();
    }

    @ParameterizedTest
    @MethodSource("names")
    void theContractionHasNoStepAboveItsStatedError(String name) {
        Contraction contraction = MaterialLibrary.of(name).orElseThrow().contraction();
        double last = contraction.at(4);
        for (double kelvin = 4.25; kelvin <= 300; kelvin += 0.25) {
            double now = contraction.at(kelvin);
            // No metal expands by more than 25e-6 /K; Invar's published value below 80 K steps by 0.5 %.
            assertThat(Math.abs(now - last)).isLessThan(0.25 * 25e-6 + 0.006 * 4e-4);
            last = now;
        }
        assertThat(contraction.at(Contraction.REFERENCE)).isZero();
        // What the published fits leave beside the reference: up to 0.08e-5, of stainless steel; 25e-6 /K.
        assertThat(contraction.at(Contraction.REFERENCE - 1e-6)).isCloseTo(0, within(8e-7 + 25e-12));
    }

    @Test
    void molybdenumFollowsTheHeatCapacityOfItsLattice() {
        // Debye and Grueneisen: the contraction is proportional to the heat content given up, theta 377 K, expansion
        // 4.8e-6 /K at 293 K.
        double theta = 377;
        double scale = 4.8e-6 / heatCapacity(theta / 293);
        Contraction contraction = of("molybdenum");
        for (double kelvin : new double[] {4, 40, 77, 100, 150, 200, 250}) {
            double estimate = new IterativeLegendreGaussIntegrator(8, 1e-10, 1e-16)
                    .integrate(100_000, t -> scale * heatCapacity(theta / t), kelvin, 293);
            assertThat(contraction.at(kelvin)).isCloseTo(estimate, within(0.08 * estimate));
        }
    }

    /** Debye's heat capacity over that of classical oscillators. */
    private static double heatCapacity(double x) {
        double integral = new IterativeLegendreGaussIntegrator(8, 1e-10, 1e-16)
                .integrate(
                        100_000,
                        t -> t == 0 ? 0 : t * t * t * t * Math.exp(t) / Math.pow(Math.expm1(t), 2),
                        0,
                        Math.min(x, 60));
        return 3 * integral / (x * x * x);
    }

    @Test
    void siliconIsTheIntegralOfItsExpansion() {
        double integral = new IterativeLegendreGaussIntegrator(8, 1e-12, 1e-18)
                .integrate(
                        100_000, t -> (3.725 * (1 - Math.exp(-5.88e-3 * (t - 124))) + 5.548e-4 * t) * 1e-6, 150, 293);
        assertThat(of("silicon").at(150)).isCloseTo(integral, within(1e-14));
    }

    @Test
    void aTableHasItsValuesAndStraightLinesBetween() {
        ContractionTable table = new ContractionTable(List.of(80.0, 100.0, 293.0), List.of(0.004, 0.0038, 0.0), 0.02);
        assertThat(table.at(80)).isEqualTo(0.004);
        assertThat(table.at(293)).isZero();
        assertThat(table.at(90)).isCloseTo(0.0039, within(1e-18));
        assertThat(table.covers(79.9)).isFalse();
    }

    /** By hand: from L0 (1 - 0.001) to L0 (1 - 0.004), though the first is at the temperature at which the program's own are 0. */
    @Test
    void aTableMayStartFromAnyLength() {
        ContractionTable table = new ContractionTable(List.of(80.0, 293.0, 300.0), List.of(0.004, 0.001, 0.0), 0.02);
        assertThat(table.between(293, 80)).isCloseTo(0.003 / 0.999, within(1e-15));
        assertThat(table.between(80, 293)).isCloseTo(-0.003 / 0.996, within(1e-15));
        assertThat(table.between(300, 80)).isEqualTo(0.004);
    }

    @Test
    void laminatesAreRefusedWithAReason() {
        assertThat(MaterialLibrary.of("G-10")).isEmpty();
        assertThat(MaterialLibrary.refusal("G-10").orElseThrow()).contains("across its cloth");
        assertThat(MaterialLibrary.refusal("aluminum")).isEmpty();
    }
}
