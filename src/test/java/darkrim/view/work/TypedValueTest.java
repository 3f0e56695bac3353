package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.Quantity;
import darkrim.view.look.ScaleChoice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TypedValueTest {
    @ParameterizedTest
    @ValueSource(strings = {"38.2", " 38.2 mm ", "38.2mm", "+382e-1", "38.20"})
    void aLengthMayHaveItsUnit(String text) {
        assertThat(TypedValue.of(text, Quantity.LENGTH)).contains(38.2);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "NaN", "Infinity", "-Infinity", "1e400", "0x10", "38.2 cm", "38.2 deg", "1,5", "1d", "."})
    void anythingElseIsRefused(String text) {
        assertThat(TypedValue.of(text, Quantity.LENGTH)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"80f", "0x1p3", "NaN", "Infinity", "1d", "", "1 mm", "-1"})
    void anEndOfARangeIsAPlainNumber(String end) {
        assertThat(TypedRange.of("0.1", end, false)).isEmpty();
        assertThat(TypedRange.of(end, "100", false)).isEmpty();
    }

    @Test
    void aRangeFromNothingIsForEqualDifferencesOnly() {
        assertThat(TypedRange.of(" 0 ", "1e-3", false)).contains(new ScaleChoice.Range(0, 1e-3));
        assertThat(TypedRange.of("0", "1e-3", true)).isEmpty();
        assertThat(TypedRange.of("1e-6", "1", true)).contains(new ScaleChoice.Range(1e-6, 1));
        assertThat(TypedRange.of("1", "1", true)).isEmpty();
    }

    @Test
    void anAngleIsInDegrees() {
        assertThat(TypedValue.of("30 deg", Quantity.ANGLE)).contains(30.0);
        assertThat(TypedValue.of("30 mm", Quantity.ANGLE)).isEmpty();
        assertThat(TypedValue.expected(Quantity.ANGLE)).contains("deg");
    }
}
