package darkrim.light;

/** Gathers samples of one number by Welford's update. Mutable, one for each thread and number. */
final class Accumulator {
    private long samples;
    private double mean;
    private double squares;

    void add(double value) {
        samples++;
        double apart = value - mean;
        mean += apart / samples;
        squares += apart * (value - mean);
    }

    void clear() {
        samples = 0;
        mean = 0;
        squares = 0;
    }

    Estimate estimate(double largest) {
        return new Estimate(samples, mean, samples < 2 ? 0 : squares / (samples - 1), largest);
    }
}
