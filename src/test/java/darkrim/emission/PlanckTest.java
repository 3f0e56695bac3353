package darkrim.emission;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import darkrim.reference.Validation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@ExtendWith(Validation.class)
class PlanckTest {
    private static final double STEFAN_BOLTZMANN = 5.670374419e-8;

    /**
     * The fractional function F(0 to lambda T) of heat-transfer texts (Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table
     * 12.1, from memory). Its constants are older: it divides by 5.670e-8 and not by what its own 3.742e8 and 1.439e4 add up to, which makes every
     * share too large by 5e-5 of itself; the second row is rounded to 5e-5.
     */
    @ParameterizedTest
    @CsvSource({
        "1000, 0.000321",
        "1448, 0.0100",
        "2000, 0.066728",
        "2898, 0.250108",
        "4000, 0.480877",
        "5000, 0.633747",
        "10000, 0.914199",
        "20000, 0.985602",
        "50000, 0.998953"
    })
    void theShareBelowAWavelengthIsTheTabulatedOne(double micrometreKelvin, double share) {
        double kelvin = 300;
        double within = Planck.radiance(kelvin, 1e-3, micrometreKelvin / kelvin);
        double all = STEFAN_BOLTZMANN * Math.pow(kelvin, 4) / Math.PI;
        Validation.requireExact(
                "K01 %05.0f um K".formatted(micrometreKelvin),
                "share of a black body's radiance below lambda T",
                "Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 12.1 (from memory)",
                share,
                "radiance within a band",
                within / all,
                6e-5);
    }

    /** Wien's peak, 2897.771955 um K (CODATA 2018), and a share of one quarter go together to four digits. */
    @Test
    void aQuarterLiesBelowThePeak() {
        double within = Planck.radiance(80, 1e-3, 2897.771955 / 80);
        assertThat(within * Math.PI / (STEFAN_BOLTZMANN * Math.pow(80, 4))).isCloseTo(0.2501, within(5e-5));
    }

    @ParameterizedTest
    @CsvSource({"4", "77", "300", "5000"})
    void allOfItIsStefanAndBoltzmanns(double kelvin) {
        Validation.requireExact(
                "K02 %04.0f K".formatted(kelvin),
                "exitance over T^4, W/(m2 K4)",
                "constant of Stefan and Boltzmann, CODATA 2018 (from memory)",
                STEFAN_BOLTZMANN,
                "radiance at all wavelengths",
                Math.PI * Planck.radiance(kelvin, 1e-4, Double.POSITIVE_INFINITY) / Math.pow(kelvin, 4),
                1e-9 * STEFAN_BOLTZMANN);
    }

    /** 4 pi zeta(3) k^3 / (h^3 c^2), zeta(3) = 1.2020569031595942 (Apery's constant). */
    @ParameterizedTest
    @CsvSource({"4", "77", "300", "5000"})
    void allPhotonsGoWithTheCubeOfTheTemperature(double kelvin) {
        double expected = 4
                * Math.PI
                * 1.2020569031595942
                * Math.pow(1.380649e-23 / 6.62607015e-34, 3)
                / Math.pow(299792458.0, 2);
        assertThat(expected).isCloseTo(1.5205e15, within(1e11));
        Validation.requireExact(
                "K03 %04.0f K".formatted(kelvin),
                "photon exitance over T^3, photons/(s m2 K3)",
                "4 pi zeta(3) k^3 / (h^3 c^2) with Apery's constant and the constants of the SI",
                expected,
                "photon radiance at all wavelengths",
                Math.PI * Planck.photonRadiance(kelvin, 1e-4, Double.POSITIVE_INFINITY) / Math.pow(kelvin, 3),
                1e-12 * expected);
    }

    /**
     * The series sum over n of e^(-n x) (x^2/n + 2x/n^2 + 2/n^3) and of e^(-n x) (x^3/n + 3x^2/n^2 + 6x/n^3 + 6/n^4) for the integrals from x to
     * infinity (any heat-transfer text); a band is a difference of two.
     */
    @ParameterizedTest
    @CsvSource({
        "30, 0.5, 2.5",
        "77, 1, 5.3",
        "147, 0.9, 2.5",
        "300, 8, 12",
        "300, 2, 2.5",
        "300, 10, 40",
        "1000, 0.4, 100"
    })
    void aBandIsTheDifferenceOfTwoSeries(double kelvin, double from, double to) {
        double low = 14387.76877503934 / (to * kelvin);
        double high = 14387.76877503934 / (from * kelvin);
        double photons = series(low, 2) - series(high, 2);
        double energy = series(low, 3) - series(high, 3);
        double k = 1.380649e-23 * kelvin / 6.62607015e-34;
        double scale = 2 * k * k * k / (299792458.0 * 299792458.0);
        assertThat(Planck.photonRadiance(kelvin, from, to)).isCloseTo(scale * photons, within(1e-10 * scale * photons));
        double inWatts = scale * 1.380649e-23 * kelvin * energy;
        assertThat(Planck.radiance(kelvin, from, to)).isCloseTo(inWatts, within(1e-10 * inWatts));
    }

    private static double series(double x, int power) {
        double sum = 0;
        for (int n = 20_000; n >= 1; n--) {
            double term = power == 2
                    ? x * x / n + 2 * x / Math.pow(n, 2) + 2 / Math.pow(n, 3)
                    : x * x * x / n + 3 * x * x / Math.pow(n, 2) + 6 * x / Math.pow(n, 3) + 6 / Math.pow(n, 4);
            sum += Math.exp(-n * x) * term;
        }
        return sum;
    }

    /** A narrow band is the law itself times its width: 2 c / lambda^4 / (e^x - 1). */
    @Test
    void aNarrowBandLosesNoDigits() {
        // Half a width of 1e-5 um leaves 3e-10 for the curvature of the law and 1e-10 for the rounding of both ends.
        double width = 1e-5;
        double metres = 4e-6;
        double law = 2 * 299792458.0 / Math.pow(metres, 4) / Math.expm1(14387.76877503934 / (4 * 100));
        assertThat(Planck.photonRadiance(100, 4 - width / 2, 4 + width / 2))
                .isCloseTo(law * width * 1e-6, within(1e-9 * law * width * 1e-6));
    }

    /** A hemisphere at one temperature gives 0.01 photon/s to a pixel of 18 um: 147 K at a cut-off of 2.5 um, 73 K at 5.3 um. */
    @ParameterizedTest
    @CsvSource({"2.5, 147", "5.3, 73"})
    void aHemisphereOfThisTemperatureGivesAHundredthOfAPhoton(double cutOff, double kelvin) {
        double pixel = 18e-6 * 18e-6;
        double low = 20;
        double high = 400;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (Math.PI * pixel * Planck.photonRadiance(middle, 0.1, cutOff) < 0.01) {
                low = middle;
            } else {
                high = middle;
            }
        }
        assertThat(Math.round(low)).isEqualTo(Math.round(kelvin));
    }

    @Test
    void nothingComesFromAbsoluteZeroAndTheColdIsNotLostToRounding() {
        assertThat(Planck.photonRadiance(0, 1, 5)).isZero();
        assertThat(Planck.radiance(0, 1, 5)).isZero();
        assertThat(Planck.photonRadiance(1e-300, 1, 5)).isZero();
        assertThat(Planck.photonRadiance(10, 1, 5)).isPositive().isLessThan(1e-90);
    }

    @Test
    void aBandThatRunsBackwardIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> Planck.photonRadiance(77, 5, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> Planck.radiance(-1, 1, 5));
        assertThatIllegalArgumentException().isThrownBy(() -> Planck.radiance(77, 0, 5));
    }
}
