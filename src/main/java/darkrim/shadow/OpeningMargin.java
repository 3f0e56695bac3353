package darkrim.shadow;

import java.util.List;
import java.util.Optional;

/**
 * How far sides of an opening can be moved in the plane of its plate, land and bevel together, everything else as it is.
 *
 * @param opening path of the opening
 * @param extent what is moved
 * @param sides names of the sides that are moved together, such as {@code +x}; empty for all of a round opening
 * @param outward how far outward until a surface that must stay dark, and is, gets light; negative: how far inward until those are dark
 *     that this alone makes dark; empty if no such surface is near
 * @param inward how far inward until a detector below loses part of the pupil behind these sides; negative: how far outward until none of
 *     its lines is cut by them; empty without a detector below
 */
public record OpeningMargin(
        String opening, Extent extent, List<String> sides, Optional<Room> outward, Optional<Room> inward) {
    /** Copies the list. */
    public OpeningMargin {
        sides = List.copyOf(sides);
    }

    /** What is moved. */
    public enum Extent {
        /** One side. */
        SIDE,
        /** The two sides that meet at a corner, together. */
        CORNER,
        /** All sides together: the opening is made larger. */
        WHOLE
    }

    /**
     * A signed distance.
     *
     * @param millimetres the distance, mm
     * @param atLeast whether no ray or edge confirms the limit: the search ended there, or beyond it nothing is proved either way
     * @param surface the surface or die that is met first, or for which the proof ends; empty where no limit was met
     */
    public record Room(double millimetres, boolean atLeast, String surface) {}
}
