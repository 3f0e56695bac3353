package darkrim.reflection;

/**
 * Scatter to all sides that changes with angle: BRDF f = factor w(in) w(out) / pi, reciprocal by its form.
 *
 * <p>A measured reflectance against angle, h: w = h, factor 1 / (mean of h). A Lambertian base of reflectance r beneath a smooth coat of index
 * n: w = 1 - F, F Fresnel's reflectance, and factor r / (n^2 (1 - r F')), F' = 1 - (1 - mean of F) / n^2 the share that the coat throws back
 * from within (all orders of light between coat and base; Saunderson, Journal of the Optical Society of America 32, 1942; the n^2 law of
 * radiance. From memory). Immutable.
 *
 * @param law what the weight is made of
 * @param complement whether the weight is one minus the law
 * @param factor what stands before the product
 * @param mean the cosine-weighted mean of the weight
 */
public record ProductScatter(AngleLaw law, boolean complement, double factor, double mean) {
    /** The scatter whose reflectance at each angle of incidence is that of the law. */
    public static ProductScatter of(AngleLaw law) {
        double mean = law.mean();
        return new ProductScatter(law, false, mean > 0 ? 1 / mean : 0, mean);
    }

    /**
     * The scatter of a Lambertian base beneath a smooth coat that does not absorb.
     *
     * @param n index of the coat, 1 or more
     * @param base reflectance of the base as met from within the coat, 0 to 1
     * @throws IllegalArgumentException if a number is out of its range
     */
    public static ProductScatter beneathCoat(double n, double base) {
        if (!(n >= 1 && base >= 0 && base <= 1)) {
            throw new IllegalArgumentException("a coat of index " + n + " over a base of reflectance " + base);
        }
        Fresnel coat = Fresnel.of(n);
        double passing = 1 - coat.mean();
        double within = 1 - passing / (n * n);
        return new ProductScatter(coat, true, base / (n * n * (1 - base * within)), passing);
    }

    /** The weight at an angle, by its cosine. */
    public double weight(double cosine) {
        double value = law.at(cosine);
        return complement ? 1 - value : value;
    }

    /** Pi times the BRDF. */
    public double value(double cosineIn, double cosineOut) {
        return factor * weight(cosineIn) * weight(cosineOut);
    }

    /** Total reflectance at an angle of incidence. */
    public double reflectance(double cosine) {
        return factor * mean * weight(cosine);
    }

    /** No value of pi times the BRDF is larger. */
    public double greatest() {
        double most = complement ? 1 - least() : law.greatest(0, 1);
        return factor * most * most;
    }

    /** The greatest weight over its mean: at no two angles is {@link #value} more than that times {@link #reflectance} at one of them. */
    public double peak() {
        return Math.sqrt(greatest() / factor) / mean;
    }

    /** Fresnel's reflectance of a coat without loss is nowhere less than half its s-polarised part at normal incidence. */
    private double least() {
        return law instanceof Fresnel fresnel ? fresnel.factor() * fresnel.s(1) / 2 : 0;
    }
}
