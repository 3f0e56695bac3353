package darkrim.trace;

/** The rays that {@link KernelFiles} makes, one after the other. */
public final class BenchmarkRays {
    private static final int NUMBERS = 8;

    private final double[] rays;

    /**
     * @param coherent whether neighbouring rays run alike
     * @param middle see {@link KernelFiles#rays}
     */
    public BenchmarkRays(boolean coherent, double middle) {
        rays = KernelFiles.rays(coherent, new double[] {100, 100, 40}, middle);
    }

    /** How many there are. */
    public int count() {
        return rays.length / NUMBERS;
    }

    /** Sets a ray out on the way of a number. */
    public void set(Ray ray, int number) {
        int i = NUMBERS * number;
        double[] r = rays;
        ray.set(r[i], r[i + 1], r[i + 2], r[i + 3], r[i + 4], r[i + 5], r[i + 7], Ray.NO_PLANE);
    }
}
