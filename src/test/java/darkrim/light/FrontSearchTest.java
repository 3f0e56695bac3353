package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FrontSearchTest {
    private static final double[] EVEN = {1, 1, 1, 1};

    /** The loop over all members is the answer; the sizes end leaves and halves everywhere. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7, 8, 9, 15, 16, 17, 33, 100, 1000})
    void theAnswerIsThatOfTheLoopOverAllMembers(int count) {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(count);
        double[] members = new double[4 * count];
        for (int i = 0; i < members.length; i++) {
            // Many members agree in a component.
            members[i] = i % 3 == 0 ? Math.round(4 * random.nextDouble()) - 2 : 2 * random.nextDouble() - 1;
        }
        FrontSearch search = new FrontSearch(members, EVEN, 0);
        int found = 0;
        for (int trial = 0; trial < 2000; trial++) {
            double[] q = new double[4];
            for (int k = 0; k < 3; k++) {
                q[k] = 2 * random.nextDouble() - 1;
            }
            // Far out in the last component few or no members are in front.
            q[3] = 4 * random.nextDouble() - 2;
            boolean any = false;
            for (int i = 0; i < count; i++) {
                double product = 0;
                for (int k = 0; k < 4; k++) {
                    product += members[4 * i + k] * q[k];
                }
                any |= product > 0;
            }
            assertThat(search.any(q[0], q[1], q[2], q[3])).isEqualTo(any);
            found += any ? 1 : 0;
        }
        assertThat(found).isPositive();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.5, 2})
    void aProductOfTheThresholdDoesNotCount(double threshold) {
        FrontSearch search = new FrontSearch(new double[] {0, 0, 1, -1}, EVEN, threshold);
        assertThat(search.any(0, 0, 1 + threshold, 1)).isFalse();
        assertThat(search.any(0, 0, Math.nextUp(1 + threshold), 1)).isTrue();
    }
}
