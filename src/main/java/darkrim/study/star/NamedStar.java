package darkrim.study.star;

import darkrim.layout.SourceSpec;
import darkrim.light.StarTally;

/**
 * A star that the layout names.
 *
 * @param star the star
 * @param tally where its light goes
 */
public record NamedStar(SourceSpec.Star star, StarTally tally) {}
