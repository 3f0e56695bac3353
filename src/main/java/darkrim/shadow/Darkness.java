package darkrim.shadow;

/** What is known about direct light on a surface. Gaps between parts narrower than the stated width count as closed. */
public sealed interface Darkness {
    /** How much work it took. */
    Effort effort();

    /**
     * No straight line from the pupil, inside the field limit, reaches the surface: proved.
     *
     * @param effort how much work it took
     */
    record Dark(Effort effort) implements Darkness {}

    /**
     * Light reaches the surface.
     *
     * @param witness a line that it takes
     * @param effort how much work it took
     */
    record Lit(WitnessRay witness, Effort effort) implements Darkness {}

    /**
     * Neither proved dark nor found lit.
     *
     * @param openArea area of the pieces that no proof was found for, mm2
     * @param openFraction their share of the surface, 0 to 1
     * @param effort how much work it took
     */
    record Undecided(double openArea, double openFraction, Effort effort) implements Darkness {}

    /**
     * What a proof took and rests on.
     *
     * @param pairs pairs of a piece of the pupil and a piece of the surface that were looked at
     * @param contactArea area dark because another part lies on it, mm2
     * @param gapWidth gaps narrower than this count as closed, mm
     */
    record Effort(long pairs, double contactArea, double gapWidth) {}
}
