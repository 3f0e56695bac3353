package darkrim.reflection;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How a surface reflects: the sum of a Lambertian part, mirrors, scatter that changes with angle, and lobes about the mirror direction; the
 * rest is absorbed. Every part is reciprocal. Immutable.
 *
 * @param lambertian total hemispherical reflectance of the Lambertian part, the same at every angle
 * @param mirrors reflectances of the mirror part, added up
 * @param products scatter to all sides that changes with angle
 * @param lobes lobes about the mirror direction
 */
public record Reflection(double lambertian, List<AngleLaw> mirrors, List<ProductScatter> products, List<Lobe> lobes) {
    /** Reflects nothing. */
    public static final Reflection NONE = new Reflection(0, List.of(), List.of(), List.of());

    /**
     * Copies the lists and leaves out what reflects nothing.
     *
     * @throws IllegalArgumentException if the Lambertian part is not within 0 to 1
     */
    public Reflection {
        if (!(lambertian >= 0 && lambertian <= 1)) {
            throw new IllegalArgumentException("reflects " + lambertian + ", expected 0 to 1");
        }
        mirrors = mirrors.stream().filter(law -> law.greatest(0, 1) > 0).toList();
        products = products.stream().filter(product -> product.greatest() > 0).toList();
        lobes = List.copyOf(lobes);
    }

    /** The same at every angle: a Lambertian part and a mirror part. */
    public static Reflection of(double diffuse, double mirror) {
        return new Reflection(diffuse, List.of(new AngleLaw.Constant(mirror)), List.of(), List.of());
    }

    /** A smooth coat of an index over a Lambertian base of a reflectance. */
    public static Reflection coat(double n, double base) {
        return new Reflection(0, List.of(Fresnel.of(n)), List.of(ProductScatter.beneathCoat(n, base)), List.of());
    }

    /** Both together. */
    public Reflection and(Reflection other) {
        return new Reflection(
                lambertian + other.lambertian,
                both(mirrors, other.mirrors),
                both(products, other.products),
                both(lobes, other.lobes));
    }

    private static <T> List<T> both(List<T> one, List<T> other) {
        return Stream.concat(one.stream(), other.stream()).toList();
    }

    /** Whether anything is reflected. */
    public boolean reflects() {
        return scatters() || hasMirror();
    }

    /** Whether anything but the mirror part is reflected. */
    public boolean scatters() {
        return isBroad() || !lobes.isEmpty();
    }

    /** Whether there is a Lambertian part or scatter that changes with angle. */
    public boolean isBroad() {
        return lambertian > 0 || !products.isEmpty();
    }

    /** Whether there is a mirror part. */
    public boolean hasMirror() {
        return !mirrors.isEmpty();
    }

    /** Whether what scatters is Lambertian only. */
    public boolean isPlain() {
        return products.isEmpty() && lobes.isEmpty();
    }

    /** Reflectance of the mirror part. */
    public double mirror(double cosine) {
        double sum = 0;
        for (int i = 0; i < mirrors.size(); i++) {
            sum += mirrors.get(i).at(cosine);
        }
        return sum;
    }

    /** No reflectance of the mirror part is larger between two cosines of the angle of incidence. */
    public double greatestMirror(double least, double most) {
        double sum = 0;
        for (int i = 0; i < mirrors.size(); i++) {
            sum += mirrors.get(i).greatest(least, most);
        }
        return sum;
    }

    /** Pi times the BRDF of what scatters broadly: the Lambertian part and what changes with angle. */
    public double broad(double in, double out) {
        double sum = lambertian;
        for (int i = 0; i < products.size(); i++) {
            sum += products.get(i).value(in, out);
        }
        return sum;
    }

    /** No value of {@link #broad} is larger. */
    public double greatestBroad() {
        double sum = lambertian;
        for (int i = 0; i < products.size(); i++) {
            sum += products.get(i).greatest();
        }
        return sum;
    }

    /** Total reflectance of {@link #broad} at an angle of incidence. */
    public double broadReflectance(double cosine) {
        double sum = lambertian;
        for (int i = 0; i < products.size(); i++) {
            sum += products.get(i).reflectance(cosine);
        }
        return sum;
    }

    /** BRDF of all lobes, 1/sr; arguments as in {@link Lobe#value}. */
    public double lobe(double in, double out, double between) {
        double sum = 0;
        for (int i = 0; i < lobes.size(); i++) {
            sum += lobes.get(i).value(in, out, between);
        }
        return sum;
    }

    /** The density with which {@link #sampleLobe} draws a direction, over projected solid angle. */
    public double lobeDensity(double given, double drawn, double between) {
        double sum = 0;
        for (int i = 0; i < lobes.size(); i++) {
            sum += lobes.get(i).greatestReflectance() * lobes.get(i).density(given, drawn, between);
        }
        return sum / lobeShares();
    }

    /** Draws a direction from one of the lobes, each in proportion to its reflectance; arguments as in {@link Lobe#sample}. */
    public boolean sampleLobe(double given, double u, double v, double[] into) {
        double rest = u * lobeShares();
        int last = lobes.size() - 1;
        for (int i = 0; i < last; i++) {
            double share = lobes.get(i).greatestReflectance();
            if (rest < share) {
                return lobes.get(i).sample(given, rest / share, v, into);
            }
            rest -= share;
        }
        double within = Math.min(1, rest / lobes.get(last).greatestReflectance());
        return lobes.get(last).sample(given, within, v, into);
    }

    private double lobeShares() {
        double sum = 0;
        for (int i = 0; i < lobes.size(); i++) {
            sum += lobes.get(i).greatestReflectance();
        }
        return sum;
    }

    /** No value of {@link #lobe} is larger, 1/sr. */
    public double greatestLobe() {
        return lobes.stream().mapToDouble(Lobe::greatestValue).sum();
    }

    /** The BRDF of all lobes over the density with which a direction is drawn is never larger. */
    public double greatestLobeWeight() {
        double all = lobeShares();
        return lobes.stream()
                .mapToDouble(lobe -> lobe.greatestWeight() * all / lobe.greatestReflectance())
                .max()
                .orElse(0);
    }

    /** No total reflectance of all lobes is larger. */
    public double greatestLobeReflectance() {
        return lobeShares();
    }

    /** No total reflectance of what scatters broadly is larger. */
    public double greatestBroadReflectance() {
        return lambertian
                + products.stream()
                        .mapToDouble(product -> Math.sqrt(product.factor() * product.greatest()) * product.mean())
                        .sum();
    }

    /** {@link #broad} at any two angles is no more than this times {@link #broadReflectance} at one of them; 1 where all is Lambertian. */
    public double peakOfBroad() {
        return products.stream().mapToDouble(ProductScatter::peak).reduce(1, Math::max);
    }

    /** Total reflectance of the lobes at an angle of incidence. */
    public double lobeReflectance(double cosine) {
        return lobes.stream().mapToDouble(lobe -> lobe.reflectance(cosine)).sum();
    }

    /** All that is reflected at an angle of incidence, 0 to 1, by its cosine. */
    public double reflectance(double cosine) {
        return broadReflectance(cosine) + mirror(cosine) + lobeReflectance(cosine);
    }

    /** The angle of incidence at which most is reflected, and how much, looked for at every degree and at the angles of every table. */
    public Peak peak() {
        DoubleStream tables = Stream.concat(mirrors.stream(), products.stream().map(ProductScatter::law))
                .filter(AngleTable.class::isInstance)
                .flatMapToDouble(law -> ((AngleTable) law).angles().stream().mapToDouble(Double::doubleValue));
        double[] angles = DoubleStream.concat(IntStream.rangeClosed(0, 90).asDoubleStream(), tables)
                .sorted()
                .toArray();
        Peak peak = new Peak(0, 0);
        for (double angle : angles) {
            double value = reflectance(StrictMath.cos(Math.toRadians(angle)));
            if (value > peak.reflectance() + 1e-9) {
                peak = new Peak(angle, value);
            }
        }
        return peak;
    }

    /**
     * Where most is reflected.
     *
     * @param angle angle of incidence, deg
     * @param reflectance total reflectance there
     */
    public record Peak(double angle, double reflectance) {}
}
