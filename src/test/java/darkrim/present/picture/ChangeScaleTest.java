package darkrim.present.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ChangeScaleTest {
    private static int part(int argb, int shift) {
        return argb >> shift & 255;
    }

    /** Luminance by the weights of IEC 61966-2-1 on its decoded values. */
    private static double luminance(int argb) {
        return 0.2126 * linear(part(argb, 16)) + 0.7152 * linear(part(argb, 8)) + 0.0722 * linear(part(argb, 0));
    }

    private static double linear(int coded) {
        double share = coded / 255.0;
        return share <= 0.04045 ? share / 12.92 : StrictMath.pow((share + 0.055) / 1.055, 2.4);
    }

    @Test
    void aRatioAndItsInverseStandEquallyFarFromTheMiddle() {
        assertThat(ChangeScale.share(1)).isEqualTo(0.5);
        for (double ratio : new double[] {1.5, 2, 5, 10, 1000}) {
            assertThat(ChangeScale.share(ratio) + ChangeScale.share(1 / ratio)).isCloseTo(1, within(1e-12));
        }
        assertThat(ChangeScale.share(0)).isZero();
        assertThat(ChangeScale.share(Double.POSITIVE_INFINITY)).isEqualTo(1);
        assertThat(ChangeScale.share(Double.NaN)).isNaN();
        assertThat(ChangeScale.argb(Double.NaN)).isEqualTo(ColourScale.UNKNOWN);
    }

    @Test
    void bothSidesGrowDarkerAlikeAndAreToldApartByBlue() {
        double before = 2;
        for (int i = 0; i <= 10; i++) {
            int less = ChangeScale.argb(0.5 - 0.05 * i);
            int more = ChangeScale.argb(0.5 + 0.05 * i);
            assertThat(luminance(less)).isCloseTo(luminance(more), within(0.01)).isLessThan(before);
            before = luminance(less);
            if (i >= 2) {
                assertThat(part(less, 0) - part(less, 16)).isGreaterThan(10);
                assertThat(part(more, 16) - part(more, 0)).isGreaterThan(10);
            }
        }
    }
}
