package darkrim.light;

/** Is told of every way of reflected light that a sample found. */
public interface PathListener {
    /**
     * A way of light.
     *
     * @param path the way; changes afterwards
     * @param node a number that stands for its surfaces and parts within this batch
     * @param value what it brings to the sample, relative irradiance; the mean of all samples is the sum of these over their number
     */
    void found(TracedPath path, int node, double value);
}
