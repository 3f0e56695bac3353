package darkrim.sampling;

import org.apache.commons.rng.UniformRandomProvider;

/**
 * The coordinates of one sample after another, each from 0 to 1: {@link #begin} goes on to the next sample, and every call of {@link #nextDouble} hands
 * out its next coordinate. Each single sample is uniform over the cube; how the samples of one batch lie to each other is up to the kind. Mutable,
 * one for each batch.
 */
public interface SamplePoints extends UniformRandomProvider {
    /** How the samples of one batch lie to each other. */
    enum Kind {
        /** Each for itself. */
        INDEPENDENT,
        /** Independent too, but two in each of many equal boxes that fill the cube: {@link PairedPoints}. */
        PAIRED,
        /** Spread evenly in every direction, in independent groups: {@link ScrambledPoints}. */
        SCRAMBLED
    }

    /** Goes on to the next sample. */
    void begin();

    /** How many samples depend on each other. */
    default int together() {
        return 1;
    }

    /** Whether the samples come in pairs of equal law, one after the other. */
    default boolean isPaired() {
        return false;
    }

    /**
     * Points of a kind; of an odd number of samples, or one that is not a multiple of a group, independent ones.
     *
     * @param random all that is random in them
     * @param samples how many samples will be drawn
     * @param halved for pairs, the numbers of the coordinates that are divided, in the order in which they are halved, again and again
     */
    static SamplePoints of(Kind kind, UniformRandomProvider random, int samples, int... halved) {
        if (kind == Kind.PAIRED && samples % 2 == 0) {
            return new PairedPoints(random, samples, halved);
        }
        if (kind == Kind.SCRAMBLED && samples % ScrambledPoints.GROUP == 0) {
            return new ScrambledPoints(random);
        }
        return new IndependentPoints(random);
    }
}
