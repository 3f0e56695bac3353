package darkrim.study.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.Distribution;
import darkrim.layout.Quantity;
import darkrim.layout.Tolerance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ContributorTest {
    @ParameterizedTest
    @EnumSource(Distribution.class)
    void meanAndVarianceAreThoseOfTheDeviations(Distribution distribution) {
        Contributor contributor = new Contributor(
                "a", Quantity.LENGTH, new Tolerance(0.2, 0.5, distribution, 2), Contributor.Acts.DIMENSION, "a", 0);
        // Midpoint sums over the quantiles: integrals from 0 to 1 of q(u) and of (q(u) - mean)^2.
        int steps = 20_000;
        double mean = 0;
        double square = 0;
        for (int i = 0; i < steps; i++) {
            double deviation = contributor.quantile((i + 0.5) / steps);
            mean += deviation / steps;
            square += deviation * deviation / steps;
        }
        assertThat(contributor.mean()).isCloseTo(mean, within(1e-5));
        assertThat(contributor.variance()).isCloseTo(square - mean * mean, within(2e-5));
    }

    @ParameterizedTest
    @EnumSource(
            value = Distribution.class,
            names = {"UNIFORM", "TRIANGULAR"})
    void noDeviationIsBeyondTheTolerance(Distribution distribution) {
        Contributor contributor = new Contributor(
                "a", Quantity.LENGTH, new Tolerance(0.2, 0.5, distribution, 2), Contributor.Acts.DIMENSION, "a", 0);
        assertThat(contributor.quantile(1e-15)).isCloseTo(-0.2, within(1e-6));
        assertThat(contributor.quantile(1 - 1e-15)).isCloseTo(0.5, within(1e-6));
        assertThat(contributor.allows(contributor.quantile(1e-15))).isTrue();
    }
}
