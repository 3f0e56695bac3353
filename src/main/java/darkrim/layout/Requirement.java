package darkrim.layout;

import darkrim.diagnostic.Place;

/**
 * What must hold for every surface that a pattern selects.
 *
 * @param name its name
 * @param surfaces pattern that selects surfaces
 * @param condition what must hold
 * @param place where it stands in the file
 */
public record Requirement(String name, String surfaces, Condition condition, Place place) {
    /** What must hold for a surface. */
    public sealed interface Condition permits NoDirect, AtMost, PupilSeen {}

    /** No direct light at all, anywhere on the surface. */
    public record NoDirect() implements Condition {}

    /**
     * Light up to a limit.
     *
     * @param light which light
     * @param limit greatest relative irradiance that passes, the mean over the surface or over a cell
     * @param per over what the mean is taken
     */
    public record AtMost(LightClass light, double limit, Per per) implements Condition {}

    /**
     * At least this share of the pupil's area is seen from every point of the surface.
     *
     * @param share least share that passes, 0 to 1
     */
    public record PupilSeen(double share) implements Condition {}

    /** A class of light. */
    public enum LightClass {
        /** Straight from the pupil. */
        DIRECT,
        /** After one reflection. */
        ONCE_REFLECTED
    }

    /** Over what a mean is taken. */
    public enum Per {
        /** The whole surface. */
        SURFACE,
        /** Each cell of the surface's map. */
        CELL
    }
}
