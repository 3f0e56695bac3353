package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.Quantity;
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

    @Test
    void anAngleIsInDegrees() {
        assertThat(TypedValue.of("30 deg", Quantity.ANGLE)).contains(30.0);
        assertThat(TypedValue.of("30 mm", Quantity.ANGLE)).isEmpty();
        assertThat(TypedValue.expected(Quantity.ANGLE)).contains("deg");
    }
}
