package darkrim.reflection;

/**
 * One measured value of a BRDF, angles after ASTM E2387 (sign of the azimuth from memory): the mirror direction has the polar angle of incidence and
 * azimuth 0, the way back has azimuth 180.
 *
 * @param incidence angle of incidence to the normal, deg, 0 to 90
 * @param polar angle of the scattered direction to the normal, deg, 0 to 90
 * @param azimuth its azimuth from the plane of the mirror direction, deg, 0 to 180
 * @param value BRDF, 1/sr, 0 or more
 */
public record BrdfRow(double incidence, double polar, double azimuth, double value) {
    /**
     * @throws IllegalArgumentException if a number is out of its range
     */
    public BrdfRow {
        if (!(incidence >= 0 && incidence <= 90 && polar >= 0 && polar <= 90 && azimuth >= 0 && azimuth <= 180)
                || !(value >= 0 && value < 1e12)) {
            throw new IllegalArgumentException(incidence + ", " + polar + ", " + azimuth + ", " + value);
        }
    }

    /** Whether its direction lies in the plane of incidence. */
    public boolean isInPlane() {
        return azimuth == 0 || azimuth == 180 || polar == 0;
    }
}
