package darkrim.scene;

import darkrim.reflection.Reflection;

/**
 * A finish of a surface by name.
 *
 * @param name name in the layout
 * @param reflection how it reflects; what it does not reflect is absorbed
 */
public record Finish(String name, Reflection reflection) {
    /** Absorbs everything. */
    public static final Finish ABSORBER = new Finish("absorber", Reflection.NONE);

    /** What a sum of reflectances may exceed 1 by, for the rounding of its quadrature. */
    private static final double ROUNDING = 1e-6;

    /**
     * @throws IllegalArgumentException if more than arrives is reflected
     */
    public Finish {
        Reflection.Peak peak = reflection.peak();
        if (!(peak.reflectance() <= 1 + ROUNDING)) {
            throw new IllegalArgumentException("finish " + name + " reflects " + peak.reflectance() + " at "
                    + peak.angle() + " deg, expected at most 1");
        }
    }

    /**
     * A Lambertian part and an ideal mirror part, the same at every angle.
     *
     * @param name name in the layout
     * @param diffuse total hemispherical reflectance of the Lambertian part, 0 to 1
     * @param mirror reflectance of the mirror part, 0 to 1
     * @throws IllegalArgumentException if a part is not within 0 to 1, or both together reflect more than arrives
     */
    public Finish(String name, double diffuse, double mirror) {
        this(name, Reflection.of(diffuse, mirror));
    }

    /** Whether anything is reflected, at any angle. */
    public boolean reflects() {
        return reflection.reflects();
    }

    /** Total hemispherical reflectance of all but the mirror part at normal incidence, 0 to 1. */
    public double diffuse() {
        return reflection.broadReflectance(1) + reflection.lobeReflectance(1);
    }

    /** Reflectance of the mirror part at normal incidence, 0 to 1. */
    public double mirror() {
        return reflection.mirror(1);
    }

    /** All that is reflected at normal incidence, 0 to 1. */
    public double reflectance() {
        return reflection.reflectance(1);
    }
}
