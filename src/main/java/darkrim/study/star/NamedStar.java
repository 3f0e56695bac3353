package darkrim.study.star;

import darkrim.layout.SourceSpec;
import darkrim.light.StarTally;

/**
 * A star that the layout names.
 *
 * @param star the star
 * @param tally where its light goes
 * @param reflected the most that any surface reflects that it may strike and that may throw light on a receiver, 0 to 1
 */
public record NamedStar(SourceSpec.Star star, StarTally tally, double reflected) {}
