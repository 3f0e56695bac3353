package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The edge function has its exact sign and is exact to two roundings: Jeannerod, Louvet, Muller 2013, theorem for Kahan's algorithm. */
class CrossProductTest {
    @Test
    void theSignIsExactForVectorsThatAreAllButParallel() {
        SplittableRandom random = new SplittableRandom(67);
        int plainIsWrong = 0;
        for (int i = 0; i < 100_000; i++) {
            double ax = random.nextDouble();
            double ay = random.nextDouble();
            double times = random.nextDouble() * 3;
            double bx = times * ax;
            double by = times * ay * (1 + random.nextInt(-1, 2) * 0x1p-52);
            BigDecimal exact = new BigDecimal(ax)
                    .multiply(new BigDecimal(by))
                    .subtract(new BigDecimal(ay).multiply(new BigDecimal(bx)));
            double value = FacetTree.cross(ax, ay, bx, by);
            assertThat(Math.signum(value)).isEqualTo(exact.signum());
            assertThat(Math.abs(new BigDecimal(value).subtract(exact).doubleValue()))
                    .isLessThanOrEqualTo(2 * 0x1p-53 * Math.abs(exact.doubleValue()));
            assertThat((int) Math.signum(FacetTree.cross(bx, by, ax, ay)))
                    .as("antisymmetric in sign")
                    .isEqualTo(-exact.signum());
            plainIsWrong += Math.signum(ax * by - ay * bx) == exact.signum() ? 0 : 1;
        }
        // The vectors are hard: the plain difference of products loses the sign of a good part.
        assertThat(plainIsWrong).isGreaterThan(10_000);
    }
}
