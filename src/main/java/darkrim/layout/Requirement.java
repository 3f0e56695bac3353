package darkrim.layout;

import darkrim.diagnostic.Place;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What must hold for every surface that a pattern selects.
 *
 * @param name its name
 * @param surfaces pattern that selects surfaces; of a clearance those on one side of it
 * @param condition what must hold
 * @param place where it stands in the file
 */
public record Requirement(String name, String surfaces, Condition condition, Place place) {
    /** What must hold for a surface. */
    public sealed interface Condition permits NoDirect, AtMost, PupilSeen, Clearance {}

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

    /**
     * Surfaces keep clear of others.
     *
     * @param other pattern that selects the surfaces on the other side
     * @param atLeast least distance that passes, coatings included, mm
     * @param lowering how one side is brought in, if that is asked for: the distance then holds on the whole way
     * @param shapes in which shapes it holds
     */
    public record Clearance(String other, double atLeast, Optional<Lowering> lowering, Shapes shapes)
            implements Condition {}

    /**
     * A straight way along which parts are brought to their place as drawn.
     *
     * @param moved pattern that selects the surfaces that are moved: all of one side, none of the other
     * @param from how far from their place they start, mm
     * @param direction which way they go, unit length
     */
    public record Lowering(String moved, double from, Vector3D direction) {}

    /** In which shapes of a layout that is cooled a clearance holds. */
    public enum Shapes {
        /** As drawn. */
        WARM,
        /** At the temperature at which it works. */
        COLD,
        /** In both. */
        BOTH
    }

    /** Whether it limits light of a class. */
    public boolean limits(LightClass light) {
        return condition instanceof AtMost most && most.light() == light;
    }

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
