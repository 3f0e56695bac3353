package darkrim.reflection;

/** A reflectance against the angle of incidence, mean of both planes of polarisation. Immutable. */
public sealed interface AngleLaw permits AngleLaw.Constant, Fresnel, AngleTable {
    /**
     * The reflectance, 0 to 1.
     *
     * @param cosine cosine of the angle of incidence, 0 to 1
     */
    double at(double cosine);

    /**
     * No reflectance between two angles is larger than this; often it is the largest itself.
     *
     * @param least least cosine of the angle of incidence
     * @param most greatest cosine
     */
    double greatest(double least, double most);

    /** In plain words, for tables: {@code n 1.5}. */
    String describe();

    /** Twice the integral of the reflectance times the cosine: the share that is reflected of light that comes alike from all sides. */
    default double mean() {
        return Quadrature.overCosine(c -> 2 * c * at(c));
    }

    /**
     * The same at every angle.
     *
     * @param reflectance 0 to 1
     */
    record Constant(double reflectance) implements AngleLaw {
        /**
         * @throws IllegalArgumentException if the reflectance is not within 0 to 1
         */
        public Constant {
            if (!(reflectance >= 0 && reflectance <= 1)) {
                throw new IllegalArgumentException("reflects " + reflectance + ", expected 0 to 1");
            }
        }

        @Override
        public double at(double cosine) {
            return reflectance;
        }

        @Override
        public double greatest(double least, double most) {
            return reflectance;
        }

        @Override
        public double mean() {
            return reflectance;
        }

        @Override
        public String describe() {
            return String.valueOf(reflectance);
        }
    }
}
