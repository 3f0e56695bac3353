package darkrim.shadow;

import java.util.Optional;

/**
 * A signed distance in the plane of a surface, and what sets it.
 *
 * @param millimetres the distance, mm; negative where the requirement is broken by as much
 * @param capped whether the search ended before a limit was found: the distance is then at least this far from 0
 * @param line the line of light, or the blocked line, that passes the limit most nearly; its end is where the margin occurs
 * @param setBy what sets it, as far as it is known: surfaces that meet at an edge, a surface on which light lies, {@code field limit} or
 *     {@code pupil rim}; of a dark clearance what moves it most, and where no line of light ends as near, an edge at which the proof ends;
 *     of other margins the edge that the line passes most nearly; empty where there is none
 */
public record Margin(double millimetres, boolean capped, Optional<WitnessRay> line, String setBy) {}
