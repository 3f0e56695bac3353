package darkrim.present;

import darkrim.reflection.Reflection;

/**
 * A finish in a list.
 *
 * @param name its name
 * @param what what kind of surface it is, and where its numbers come from; may be empty
 * @param band the band of wavelengths, in words
 * @param reflection how it reflects in that band
 */
public record ListedFinish(String name, String what, String band, Reflection reflection) {
    /** All that is reflected at an angle of incidence in deg. */
    public double reflectance(double angle) {
        return reflection.reflectance(StrictMath.cos(Math.toRadians(angle)));
    }
}
