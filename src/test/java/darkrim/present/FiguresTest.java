package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FiguresTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "1, 1.00",
        "0.01234, 0.0123",
        "0.001, 0.00100",
        "0.0009999, 0.00100",
        "0.00099, 9.90e-4",
        "2.1e-6, 2.10e-6",
        "9.996e-7, 1.00e-6",
        "1348.36, 1350",
        "99999, 1.00e5",
        "46.25, 46.2",
        "-0.25, -0.250",
        "NaN, unknown",
        "Infinity, unknown"
    })
    void threeDigitsThatMatter(double value, String shown) {
        assertThat(Figures.three(value)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({
        "0.7075, 0.0031, 0.708 +- 0.004",
        "0.98050, 0.000101, 0.9805 +- 0.0002",
        "1.46e-4, 6.5e-6, (1.46 +- 0.07)e-4",
        "2.13456e-6, 4e-9, (2.135 +- 0.004)e-6",
        "2e-6, 3.4e-6, (2.00 +- 3.40)e-6",
        "0.3, 1e-9, 0.30000 +- 0.00001",
        "20.5, 0.3, 20.5 +- 0.3",
        "12345, 200, 12345 +- 200",
        "0.5, 0, 0.500 +- 0",
        "0.5, Infinity, 0.500 +- unknown"
    })
    void anErrorStandsInThePowerOfItsValue(double value, double error, String shown) {
        assertThat(Figures.withError(value, error)).isEqualTo(shown);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.0000001e-5, 0.123456, 9.999e-4, 17.777, 3.00000001, 1.85e-5})
    void boundsAreRoundedToTheSafeSide(double bound) {
        BigDecimal exact = BigDecimal.valueOf(bound);
        assertThat(new BigDecimal(Figures.atMost(bound))).isGreaterThanOrEqualTo(exact);
        assertThat(new BigDecimal(Figures.atLeast(bound))).isLessThanOrEqualTo(exact);
    }

    @Test
    void aSmallShareIsNotShownAsNone() {
        assertThat(Figures.percent(0.0004)).isEqualTo("< 0.1 %");
        assertThat(Figures.percent(0)).isEqualTo("0.0 %");
        assertThat(Figures.percent(0.4394)).isEqualTo("43.9 %");
    }

    @Test
    void aConfidenceKeepsAllItsDigits() {
        assertThat(Figures.confidence(0.999)).isEqualTo("99.9 %");
        assertThat(Figures.confidence(0.99999)).isEqualTo("99.999 %");
        assertThat(Figures.confidence(0.75)).isEqualTo("75 %");
        assertThat(Figures.confidence(0.999999999)).isEqualTo("99.9999999 %");
        assertThat(Figures.confidence(1 - 1e-15)).startsWith("99.99999999999").endsWith(" %");
        assertThat(Figures.confidence(1 - 1.0 / 3000)).isEqualTo("99.9667 %");
    }

    @Test
    void lengthsHaveMicrometresAndNoUselessZeros() {
        assertThat(Figures.length(320)).isEqualTo("320");
        assertThat(Figures.length(-0.17500000000000002)).isEqualTo("-0.175");
        assertThat(Figures.length(1.4e-15)).isEqualTo("0");
        assertThat(Figures.length(-1e-9)).isEqualTo("0");
    }

    @Test
    void countsAreSeparatedAndTakeAnSWhereTheyAreMany() {
        assertThat(Figures.counted(1, "sample")).isEqualTo("1 sample");
        assertThat(Figures.counted(1_048_576, "sample")).isEqualTo("1,048,576 samples");
    }

    @Test
    void twoThingsAreBothAndOneIsNotCounted() {
        assertThat(Figures.all(1, "surface")).isEqualTo("the surface");
        assertThat(Figures.all(2, "surface")).isEqualTo("both surfaces");
        assertThat(Figures.all(24, "surface")).isEqualTo("all 24 surfaces");
    }

    @Test
    void aLimitIsShownAsItWasWrittenInTheStyleOfTheValuesBesideIt() {
        assertThat(Figures.limit(1e-4)).isEqualTo("1e-4");
        assertThat(Figures.limit(1.25e-4)).isEqualTo("1.25e-4");
        assertThat(Figures.limit(2e-5)).isEqualTo("2e-5");
        assertThat(Figures.limit(0.001)).isEqualTo("0.001");
        assertThat(Figures.limit(0.3)).isEqualTo("0.3");
        assertThat(Figures.limit(1.0 / 3)).isEqualTo("0.333333");
        assertThat(Figures.limit(20)).isEqualTo("20");
        assertThat(Figures.limit(0)).isEqualTo("0");
        assertThat(Figures.limit(1)).isEqualTo("1");
        // The value of the table's other column, for the same style.
        assertThat(Figures.three(1.2e-4)).isEqualTo("1.20e-4");
    }

    @Test
    void aLimitBelowOneDoesNotReadAsOne() {
        assertThat(Figures.limit(0.999)).isEqualTo("0.999");
        assertThat(Figures.limit(0.99999999)).isEqualTo("0.99999999");
    }
}
