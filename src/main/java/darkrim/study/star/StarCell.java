package darkrim.study.star;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A square of star positions.
 *
 * @param x its middle, mm
 * @param y likewise
 * @param width its side, mm
 * @param proved whether it is proved that no star in it sends once-reflected light to a receiver
 * @param positions what was looked at in it; empty where it is proved, or the scan was stopped before
 */
public record StarCell(double x, double y, double width, boolean proved, List<StarPosition> positions) {
    /** Half the width, less rounding. */
    private static final double CORNER = 0.499;

    /** Copies the list. */
    public StarCell {
        positions = List.copyOf(positions);
    }

    /** The position with the most once-reflected light of those that were looked at. */
    public Optional<StarPosition> brightest() {
        return positions.stream().max(Comparator.comparingDouble(StarPosition::share));
    }

    /** Whether a position lies on its corner, which it shares with three other cells. */
    private boolean onCorner(StarPosition position) {
        double least = CORNER * width;
        return Math.abs(position.x() - x) >= least && Math.abs(position.y() - y) >= least;
    }

    /** Its share: of the brightest position that does not lie on its corner, if there is another; 0 where it is proved, NaN where nothing is known. */
    public double share() {
        if (proved) {
            return 0;
        }
        return positions.stream()
                .filter(position -> !onCorner(position))
                .max(Comparator.comparingDouble(StarPosition::share))
                .or(this::brightest)
                .map(StarPosition::share)
                .orElse(Double.NaN);
    }

    /** No position that was looked at in it is likely to have more; 1 where nothing is known. */
    public double upper(StarBound bound) {
        return proved
                ? 0
                : positions.stream()
                        .mapToDouble(position -> bound.upper(position))
                        .max()
                        .orElse(1);
    }
}
