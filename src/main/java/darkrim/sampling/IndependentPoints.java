package darkrim.sampling;

import org.apache.commons.rng.UniformRandomProvider;

/** Samples that have nothing to do with each other. */
record IndependentPoints(UniformRandomProvider random) implements SamplePoints {
    @Override
    public void begin() {
        // Each number is drawn when it is asked for.
    }

    @Override
    public long nextLong() {
        return random.nextLong();
    }

    @Override
    public double nextDouble() {
        return random.nextDouble();
    }
}
