package darkrim.study.star;

import darkrim.light.StarTally;

/**
 * A position of the star and what was found there.
 *
 * @param x where its image lies, mm
 * @param y likewise
 * @param tally where its light goes
 * @param reflected the most that any surface reflects that it may strike and that may throw light on a receiver, 0 to 1
 */
public record StarPosition(double x, double y, StarTally tally, double reflected) {
    /** Share of the star's flux that arrives on all receivers together after one reflection. */
    public double share() {
        return tally.total().mean();
    }

    /** Standard error of the share. */
    public double error() {
        return tally.total().standardError();
    }
}
