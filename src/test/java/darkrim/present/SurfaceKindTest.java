package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurfaceKindTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "mosaic/die[1,2]/edge/+x     | mosaic/die/edge",
                "mosaic/die[2,2]/bonds/-y/inner | mosaic/die/bonds/inner",
                "mosaic/die[2,2]/bonds/+y/end-2 | mosaic/die/bonds/end",
                "mosaic/die[2,2]/bonds/+y/end-12 | mosaic/die/bonds/end",
                "lid/opening[1,1]/bevel/3    | lid/opening/bevel",
                "bar[3,1]/-z                 | bar",
                "stop/front                  | stop/front",
                "flag-2/front                | flag-2/front"
            })
    void kindsLeaveOutNumbersAndSides(String name, String kind) {
        assertThat(SurfaceKind.kind(name)).isEqualTo(kind);
    }
}
