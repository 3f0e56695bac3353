package darkrim.scene;

/**
 * How a surface reflects: a Lambertian part and an ideal mirror part; the rest is absorbed.
 *
 * @param name name in the layout
 * @param diffuse total hemispherical reflectance of the Lambertian part, 0 to 1, the same at every angle
 * @param mirror reflectance of the mirror part, 0 to 1, the same at every angle
 */
public record Finish(String name, double diffuse, double mirror) {
    /** Absorbs everything. */
    public static final Finish ABSORBER = new Finish("absorber", 0, 0);

    /**
     * @throws IllegalArgumentException if a part is not within 0 to 1, or both together reflect more than arrives
     */
    public Finish {
        if (!(diffuse >= 0 && mirror >= 0 && diffuse + mirror <= 1)) {
            throw new IllegalArgumentException("finish " + name + " reflects " + (diffuse + mirror)
                    + ", expected parts from 0 to 1 that add up to at most 1");
        }
    }

    /** All that is reflected, diffuse and mirror together, 0 to 1. */
    public double reflectance() {
        return diffuse + mirror;
    }
}
