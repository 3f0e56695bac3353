package darkrim.shadow;

import java.util.Optional;

/**
 * A signed distance in the plane of a surface, and what sets it.
 *
 * @param millimetres the distance, mm; negative where the requirement is broken by as much
 * @param capped whether the search ended before a limit was found: the distance is then at least this far from 0
 * @param line the line of light, or the blocked line, that passes the limit most nearly; its end is where the margin occurs
 * @param setBy surfaces that meet at the edge which the line passes most nearly, or {@code field limit}; empty if there is no line
 */
public record Margin(double millimetres, boolean capped, Optional<WitnessRay> line, String setBy) {}
