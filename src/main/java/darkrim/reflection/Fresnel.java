package darkrim.reflection;

/**
 * The reflectance of a smooth face of a homogeneous material in vacuum, unpolarised light.
 *
 * <p>With (n - i k)^2 - sin^2 = (a - i b)^2: Rs = ((a - c)^2 + b^2) / ((a + c)^2 + b^2), Rp / Rs = ((a c - s^2)^2 + b^2 c^2) / ((a c + s^2)^2 +
 * b^2 c^2), c and s the cosine and sine of the angle of incidence. Born and Wolf, Principles of Optics, 1.5.2 and 14.2 (sections from memory).
 *
 * @param n refractive index, above 0
 * @param k extinction coefficient, 0 or more
 * @param factor what the reflectance is multiplied by, 0 to 1: less than 1 where roughness or haze takes a share
 */
public record Fresnel(double n, double k, double factor) implements AngleLaw {
    /**
     * @throws IllegalArgumentException if a number is out of its range
     */
    public Fresnel {
        if (!(n > 0 && k >= 0 && n + k < 1e6 && factor >= 0 && factor <= 1)) {
            throw new IllegalArgumentException("index " + n + ", " + k + ", factor " + factor);
        }
    }

    /** A face without loss. */
    public static Fresnel of(double n) {
        return new Fresnel(n, 0, 1);
    }

    @Override
    public double at(double cosine) {
        return factor * (s(cosine) + p(cosine)) / 2;
    }

    /**
     * The s-polarised reflectance never falls as light becomes more oblique, and the p-polarised one falls to one minimum and rises to 1 (Born
     * and Wolf, the same sections): the sum of their largest values bounds the mean.
     */
    @Override
    public double greatest(double least, double most) {
        return factor * (s(least) + Math.max(p(least), p(most))) / 2;
    }

    /** Reflectance of light polarised across the plane of incidence, without the factor. */
    public double s(double cosine) {
        double a2 = a2(cosine);
        double b2 = b2(cosine, a2);
        double a = Math.sqrt(a2);
        double below = (a + cosine) * (a + cosine) + b2;
        return below > 0 ? ((a - cosine) * (a - cosine) + b2) / below : 1;
    }

    /** Reflectance of light polarised in the plane of incidence, without the factor. */
    public double p(double cosine) {
        double a2 = a2(cosine);
        double b2 = b2(cosine, a2);
        double along = Math.sqrt(a2) * cosine;
        double sine2 = Math.max(0, 1 - cosine * cosine);
        double lossy = b2 * cosine * cosine;
        double below = (along + sine2) * (along + sine2) + lossy;
        return below > 0 ? s(cosine) * ((along - sine2) * (along - sine2) + lossy) / below : s(cosine);
    }

    @Override
    public String describe() {
        return "n " + n + (k > 0 ? ", k " + k : "") + (factor < 1 ? ", times " + factor : "");
    }

    private double difference(double cosine) {
        return n * n - k * k - Math.max(0, 1 - cosine * cosine);
    }

    private double a2(double cosine) {
        double q = difference(cosine);
        double root = Math.sqrt(q * q + 4 * n * n * k * k);
        if (q >= 0) {
            return (root + q) / 2;
        }
        // Without cancellation: a b = n k.
        return 2 * n * n * k * k / (root - q);
    }

    private double b2(double cosine, double a2) {
        double q = difference(cosine);
        return q < 0 ? a2 - q : a2 > 0 ? n * n * k * k / a2 : 0;
    }
}
