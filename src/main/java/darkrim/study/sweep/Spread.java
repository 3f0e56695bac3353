package darkrim.study.sweep;

import darkrim.sampling.Streams;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.rng.UniformRandomProvider;
import org.hipparchus.random.SobolSequenceGenerator;

/**
 * Points spread evenly over ranges: Sobol's sequence (direction numbers of Joe and Kuo, 2008) under a random digital shift, which keeps its
 * evenness and makes each point uniform (L'Ecuyer and Lemieux, Recent advances in randomized quasi-Monte Carlo methods, 2002).
 */
final class Spread {
    /** Binary digits of the sequence. */
    private static final int DIGITS = 52;

    private static final double SCALE = 1L << DIGITS;

    private Spread() {}

    /** The first points of the sequence that the seed gives. */
    static List<Map<String, Double>> points(List<Variation> ranges, int count, long seed) {
        long[] shift = new long[ranges.size()];
        for (int i = 0; i < shift.length; i++) {
            UniformRandomProvider random =
                    new Streams(seed).stream("spread over " + ranges.get(i).dimension(), 0);
            shift[i] = random.nextLong() >>> (Long.SIZE - DIGITS);
        }
        SobolSequenceGenerator sequence = new SobolSequenceGenerator(shift.length);
        List<Map<String, Double>> points = new ArrayList<>();
        for (int point = 0; point < count; point++) {
            double[] vector = sequence.nextVector();
            Map<String, Double> chosen = new LinkedHashMap<>();
            for (int i = 0; i < shift.length; i++) {
                double share = ((long) (vector[i] * SCALE) ^ shift[i]) / SCALE;
                double from = ranges.get(i).from().doubleValue();
                double to = ranges.get(i).to().doubleValue();
                chosen.put(ranges.get(i).dimension(), from + share * (to - from));
            }
            points.add(chosen);
        }
        return points;
    }
}
