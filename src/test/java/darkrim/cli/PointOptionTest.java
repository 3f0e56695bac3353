package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.TypeConversionException;

class PointOptionTest {
    private final PointOption.Reader reader = new PointOption.Reader();

    @Test
    void aSurfaceAloneMeansItsMiddle() {
        assertThat(reader.convert("mosaic/die[1,2]/active"))
                .isEqualTo(new PointOption("mosaic/die[1,2]/active", 0.5, 0.5));
    }

    @Test
    void sharesStandBehindTheLastColon() {
        assertThat(reader.convert("mosaic/die[1,2]/active:0.25, 1"))
                .isEqualTo(new PointOption("mosaic/die[1,2]/active", 0.25, 1));
        assertThat(reader.convert("a:b/c:.5,1e-3")).isEqualTo(new PointOption("a:b/c", 0.5, 0.001));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a:",
                "a:0.5",
                "a:,",
                "a:0.5,",
                "a:0.5,0.5,0.5",
                "a:-0.1,0.5",
                "a:0.5,1.01",
                "a:NaN,0",
                "a:x,y",
                "a:0x1p-1,0",
                "a:.,.",
                "a:1e,0",
                "a:0,5;0,5"
            })
    void anythingElseIsRefusedWithAnExample(String text) {
        assertThatThrownBy(() -> reader.convert(text))
                .isInstanceOf(TypeConversionException.class)
                .hasMessageContaining("'mosaic/die[1,2]/active:0.25,0.5'");
    }
}
