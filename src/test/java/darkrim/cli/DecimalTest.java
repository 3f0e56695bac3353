package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.TypeConversionException;

class DecimalTest {
    @ParameterizedTest
    @CsvSource({"80, 80", "' -0.5 ', -0.5", "+3., 3", ".25, 0.25", "2e8, 200000000", "1.5E-3, 0.0015"})
    void decimalNumbersAreRead(String text, double expected) {
        assertThat(Decimal.read(text)).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(strings = {"80f", "300d", "1e3D", "0x14p0", "NaN", "Infinity", "", ".", "e5", "1,5", "1 2", "٣"})
    void whatOnlyAProgramTakesForANumberIsNone(String text) {
        assertThatThrownBy(() -> Decimal.read(text)).isInstanceOf(NumberFormatException.class);
    }

    @Test
    void everyReaderOfANumberRefusesIt() {
        for (String bad : new String[] {"1f", "1d", "0x1p0"}) {
            assertRefused(() -> new RealNumber.Length().convert(bad));
            assertRefused(() -> new Share().convert(bad.replace("1", "0.1")));
            assertRefused(() -> new TripleOption().convert("0,0," + bad));
            assertRefused(() -> new ValueRange().convert("0.." + bad));
            assertRefused(() -> new BandOption.Reader().convert("0.5," + bad));
            assertRefused(() -> new DirectionOption().convert("0," + bad));
            assertThat(Question.ROWS.read(bad)).isEmpty();
        }
    }

    private static void assertRefused(ThrowingCallable reading) {
        assertThatThrownBy(reading).isInstanceOf(TypeConversionException.class).hasMessageContaining("expected ");
    }
}
