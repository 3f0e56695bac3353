package darkrim.sampling;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SamplePointsTest {
    private static final Streams STREAMS = new Streams(11);

    /** A smooth function of the first four coordinates with mean 1; (1 + a) is its product of factors with mean 1. */
    private static double smooth(SamplePoints points) {
        points.begin();
        double product = 1;
        for (int k = 0; k < 4; k++) {
            product *= 1.5 - points.nextDouble();
        }
        return product;
    }

    private static double mean(SamplePoints.Kind kind, int batch, int samples) {
        SamplePoints points = SamplePoints.of(kind, STREAMS.stream("points", batch), samples, 0, 1, 2, 3);
        double sum = 0;
        for (int i = 0; i < samples; i++) {
            sum += smooth(points);
        }
        return sum / samples;
    }

    /** 400 independent batches; at 4 standard errors a false alarm in 6e-5 of all seeds. */
    @ParameterizedTest
    @EnumSource
    void everyKindIsRightInTheMean(SamplePoints.Kind kind) {
        double sum = 0;
        double squares = 0;
        for (int batch = 0; batch < 400; batch++) {
            double off = mean(kind, batch, 384) - 1;
            sum += off;
            squares += off * off;
        }
        double error = Math.sqrt(squares / 400 / 400);
        assertThat(Math.abs(sum / 400)).isLessThan(4 * error);
    }

    /** Variances of means of 256 samples over 400 batches: their ratios are known to about 10 %, so a factor of 3 is 20 standard errors away. */
    @Test
    void evenPointsTellASmoothMeanFarBetter() {
        double alone = variance(SamplePoints.Kind.INDEPENDENT);
        assertThat(variance(SamplePoints.Kind.PAIRED)).isLessThan(alone / 3);
        assertThat(variance(SamplePoints.Kind.SCRAMBLED)).isLessThan(alone / 30);
    }

    private static double variance(SamplePoints.Kind kind) {
        double sum = 0;
        for (int batch = 0; batch < 400; batch++) {
            sum += Math.pow(mean(kind, batch, 256) - 1, 2);
        }
        return sum;
    }

    @Test
    void eachBoxGetsTwoSamplesThatFollowEachOther() {
        // 24 pairs are a run of 16 boxes and one of 8.
        SamplePoints points = SamplePoints.of(SamplePoints.Kind.PAIRED, STREAMS.stream("pairs", 0), 48, 1, 0);
        Set<Integer> boxes = new HashSet<>();
        for (int pair = 0; pair < 24; pair++) {
            int side = pair < 16 ? 4 : 2;
            int first = box(points, side);
            assertThat(box(points, side)).isEqualTo(first);
            boxes.add(pair < 16 ? first : 100 + first);
        }
        assertThat(boxes).hasSize(24);
    }

    /** Of 8 boxes the coordinate that is halved first gets 4, the other 2. */
    private static int box(SamplePoints points, int side) {
        points.begin();
        int across = (int) (points.nextDouble() * (side == 4 ? 4 : 2));
        return across + 10 * (int) (points.nextDouble() * 4);
    }

    /** The defining property of the first two Sobol coordinates, a (0, 7, 2)-net in base 2: every box of area 1/128 gets one point of 128. */
    @Test
    void everyBoxOfBinarySidesGetsOnePointOfAGroup() {
        SamplePoints points = SamplePoints.of(SamplePoints.Kind.SCRAMBLED, STREAMS.stream("net", 0), 256);
        assertThat(points.together()).isEqualTo(128);
        for (int group = 0; group < 2; group++) {
            double[][] at = new double[128][2];
            for (double[] point : at) {
                points.begin();
                point[0] = points.nextDouble();
                point[1] = points.nextDouble();
            }
            for (int columns = 1; columns <= 128; columns *= 2) {
                Set<Integer> hit = new HashSet<>();
                for (double[] point : at) {
                    int rows = 128 / columns;
                    int column = (int) (point[0] * columns);
                    hit.add(column * 1000 + (int) (point[1] * rows));
                }
                assertThat(hit).as("%s columns", columns).hasSize(128);
            }
        }
    }

    @Test
    void aNumberThatDoesNotFitGivesIndependentPoints() {
        assertThat(SamplePoints.of(SamplePoints.Kind.PAIRED, STREAMS.stream("odd", 0), 7)
                        .isPaired())
                .isFalse();
        assertThat(SamplePoints.of(SamplePoints.Kind.SCRAMBLED, STREAMS.stream("odd", 0), 100)
                        .together())
                .isEqualTo(1);
    }
}
