package darkrim.study.star;

import darkrim.light.StarTally;
import darkrim.study.star.StarGrid.Square;
import java.util.ArrayList;
import java.util.List;

/** Where the light of a star changes with its position by more than it is uncertain, so that the map must be finer. */
final class StarChange {
    /** Differences in standard errors that count as a change. */
    private static final double ERRORS = 3;
    /** Relative differences that count as a change. */
    private static final double CONTRAST = 0.4;
    /** Changes of less than this share of the level matter to nobody. */
    private static final double FAINT = 0.1;

    private final StarGrid grid;
    private final double level;

    /**
     * @param level share of the star's flux that is too much
     */
    StarChange(StarGrid grid, double level) {
        this.grid = grid;
        this.level = level;
    }

    /** Whether a share matters beside the level. */
    boolean matters(double share) {
        return share > FAINT * level;
    }

    /** Whether positions in a square differ from each other, or from those in a square beside it. */
    boolean in(Square square) {
        List<StarPosition> near = new ArrayList<>(square.positions);
        for (Square neighbour : grid.neighbours(square)) {
            if (neighbour.proved) {
                near.add(new StarPosition(0, 0, StarTally.none(0), 0));
            } else {
                near.addAll(neighbour.positions);
            }
        }
        for (StarPosition one : square.positions) {
            for (StarPosition two : near) {
                if (differ(one, two)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean differ(StarPosition one, StarPosition two) {
        double most = Math.max(one.share(), two.share());
        double apart = Math.abs(one.share() - two.share());
        double error = Math.hypot(errorOf(one), errorOf(two));
        boolean across = (one.share() > level) != (two.share() > level);
        return matters(most) && apart > ERRORS * error && (across || apart > CONTRAST * most);
    }

    private static double errorOf(StarPosition position) {
        return position.tally().samples() == 0 ? 0 : position.error();
    }

    /** The largest share found in a square. */
    static double brightest(Square square) {
        return square.positions.stream().mapToDouble(StarPosition::share).max().orElse(0);
    }
}
