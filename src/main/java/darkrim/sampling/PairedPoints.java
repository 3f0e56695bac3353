package darkrim.sampling;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Two independent samples in each of many equal boxes that fill the cube of the first few coordinates. All samples are independent, so what is
 * known of sums of independent numbers holds; only that they do not all have the same law. The differences within the boxes tell their variance
 * (two draws a stratum: Cochran, Sampling Techniques, ch. 5).
 *
 * <p>There are 2^k boxes: the coordinates are halved in turn. A number of samples that is no power of two is made of runs that are.
 */
final class PairedPoints implements SamplePoints {
    private final UniformRandomProvider random;
    private final int[] halved;
    private final int[] index;
    private final int[] halvings;
    private int left;
    private int bits = -1;
    private int box;
    private boolean second = true;
    private int next;

    /**
     * @param samples how many samples will be drawn, even
     * @param halved numbers of the coordinates in the order in which they are halved, again and again
     */
    PairedPoints(UniformRandomProvider random, int samples, int... halved) {
        this.random = random;
        this.left = samples / 2;
        this.halved = halved.clone();
        int divided = 1 + Arrays.stream(halved).max().orElse(-1);
        this.index = new int[divided];
        this.halvings = new int[divided];
    }

    @Override
    public void begin() {
        next = 0;
        second = !second;
        if (second) {
            return;
        }
        if (bits < 0 || box + 1 == 1 << bits) {
            bits = 31 - Integer.numberOfLeadingZeros(Math.max(1, left));
            box = 0;
            left -= 1 << bits;
        } else {
            box++;
        }
        Arrays.fill(index, 0);
        Arrays.fill(halvings, 0);
        for (int bit = 0; bit < bits && halved.length > 0; bit++) {
            int coordinate = halved[bit % halved.length];
            index[coordinate] = 2 * index[coordinate] + ((box >> bit) & 1);
            halvings[coordinate]++;
        }
    }

    @Override
    public boolean isPaired() {
        return true;
    }

    @Override
    public long nextLong() {
        return random.nextLong();
    }

    @Override
    public double nextDouble() {
        double uniform = random.nextDouble();
        if (next >= index.length) {
            return uniform;
        }
        int coordinate = next++;
        return (index[coordinate] + uniform) / (1 << halvings[coordinate]);
    }
}
