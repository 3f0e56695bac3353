package darkrim.sampling;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Random streams, one for each unit of work, found from the seed, the name of what is measured and the number of the batch. The same
 * unit gets the same numbers on any thread and any machine, and the same point of two revisions gets common random numbers.
 *
 * <p>Generator: xoshiro256++ (Blackman and Vigna, "Scrambled linear pseudorandom number generators", ACM TOMS 47, 2021), seeded
 * through SplitMix64 (Steele, Lea, Flood, OOPSLA 2014).
 */
public final class Streams {
    private static final long GOLDEN = 0x9e3779b97f4a7c15L;

    private final long seed;

    /**
     * @param seed the seed of the whole run
     */
    public Streams(long seed) {
        this.seed = seed;
    }

    /** The seed of the whole run. */
    public long seed() {
        return seed;
    }

    /**
     * The stream of one unit of work.
     *
     * @param name what is measured, such as the name of a surface and the class of light
     * @param batch number of the batch
     */
    public UniformRandomProvider stream(String name, long batch) {
        long state = mix(mix(seed + GOLDEN) ^ hash(name)) ^ mix(batch * GOLDEN + 1);
        long[] words = new long[4];
        for (int i = 0; i < words.length; i++) {
            state += GOLDEN;
            words[i] = mix(state);
        }
        return RandomSource.XO_SHI_RO_256_PP.create(words);
    }

    /** FNV-1a over the characters, 64 bits: stable between runs and machines. */
    private static long hash(String name) {
        long value = 0xcbf29ce484222325L;
        for (int i = 0; i < name.length(); i++) {
            value = (value ^ name.charAt(i)) * 0x100000001b3L;
        }
        return value;
    }

    /** The finaliser of SplitMix64. */
    private static long mix(long value) {
        long z = value;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}
