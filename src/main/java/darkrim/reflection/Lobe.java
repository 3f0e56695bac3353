package darkrim.reflection;

/**
 * A lobe of scatter about the mirror direction that neither turns with the surface nor favours a side. Directions point away from the surface;
 * three numbers tell two of them apart: their cosines to the normal and their cosine to each other. Densities are over projected solid angle,
 * cos(theta) d omega: that is the area of the unit disc of direction cosines. Immutable.
 */
public sealed interface Lobe permits RollOff, BrdfTable {
    /**
     * The BRDF, 1/sr; the same with both directions exchanged.
     *
     * @param in cosine of one direction to the normal, above 0
     * @param out cosine of the other, above 0
     * @param between cosine of the angle between the two
     */
    double value(double in, double out, double between);

    /**
     * The density with which {@link #sample} draws a direction for a given one.
     *
     * @param given cosine of the given direction
     * @param drawn cosine of the drawn one
     * @param between cosine of the angle between the two
     */
    double density(double given, double drawn, double between);

    /**
     * Draws a direction for a given one.
     *
     * @param given cosine of the given direction
     * @param u uniform from 0 to 1
     * @param v uniform from 0 to 1
     * @param into receives the direction cosines along the mirror direction's projection and across it
     * @return whether they lie within the unit disc: otherwise nothing is reflected
     */
    boolean sample(double given, double u, double v, double[] into);

    /** Value over density is never larger. */
    double greatestWeight();

    /** No value is larger, 1/sr. */
    double greatestValue();

    /** Total reflectance at an angle of incidence, by its cosine. */
    double reflectance(double cosine);

    /** No total reflectance is larger. */
    double greatestReflectance();

    /** In plain words, for tables. */
    String describe();
}
