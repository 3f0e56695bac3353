package darkrim.sampling;

import org.apache.commons.rng.UniformRandomProvider;
import org.hipparchus.random.SobolSequenceGenerator;

/**
 * Sobol points, scrambled anew and independently for each group: however the cube is cut into 2^k equal boxes of binary sides, each gets nearly its
 * share of a group. Nested uniform scrambling of Owen, "Randomly permuted (t,m,s)-nets and (t,s)-sequences", 1995: each binary digit of a
 * coordinate is turned or not by a coin of its own for every run of digits before it. Every single point is uniform, so means are unbiased; the points
 * of a group depend on each other, and only the means of groups are independent samples.
 *
 * <p>Direction numbers: those of the library, which has them from Joe and Kuo, "Constructing Sobol sequences with better two-dimensional projections",
 * SIAM J. Sci. Comput. 30, 2008. Coordinates beyond the first {@value #COORDINATES} are independent.
 */
final class ScrambledPoints implements SamplePoints {
    /** Points of a group. */
    static final int GROUP = 128;

    private static final int DIGITS = 7;
    private static final int COORDINATES = 10;
    /** The first digits of the points of a group, by point and coordinate. */
    private static final int[] NET = net();

    private final UniformRandomProvider random;
    /** Coins by coordinate and by the digits before, with a leading 1. */
    private final boolean[] turned = new boolean[COORDINATES * GROUP];

    private int point = -1;
    private int next;

    ScrambledPoints(UniformRandomProvider random) {
        this.random = random;
    }

    private static int[] net() {
        SobolSequenceGenerator sequence = new SobolSequenceGenerator(COORDINATES);
        int[] net = new int[GROUP * COORDINATES];
        for (int i = 0; i < GROUP; i++) {
            double[] vector = sequence.nextVector();
            for (int k = 0; k < COORDINATES; k++) {
                net[COORDINATES * i + k] = (int) (vector[k] * GROUP);
            }
        }
        return net;
    }

    @Override
    public int together() {
        return GROUP;
    }

    @Override
    public void begin() {
        next = 0;
        point = (point + 1) % GROUP;
        if (point == 0) {
            long coins = 0;
            for (int i = 0; i < turned.length; i++) {
                coins = i % Long.SIZE == 0 ? random.nextLong() : coins >>> 1;
                turned[i] = (coins & 1) == 1;
            }
        }
    }

    @Override
    public long nextLong() {
        return random.nextLong();
    }

    /** After the digits of the net all digits are coins of their own: no two points of a group share the digits before. */
    @Override
    public double nextDouble() {
        double uniform = random.nextDouble();
        if (next >= COORDINATES) {
            return uniform;
        }
        int coordinate = next++;
        int digits = NET[COORDINATES * point + coordinate];
        int before = 1;
        int scrambled = 0;
        for (int digit = DIGITS - 1; digit >= 0; digit--) {
            int bit = (digits >> digit) & 1;
            scrambled = 2 * scrambled + (turned[GROUP * coordinate + before] ? 1 - bit : bit);
            before = 2 * before + bit;
        }
        return (scrambled + uniform) / GROUP;
    }
}
