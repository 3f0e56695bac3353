package darkrim.study.star;

import darkrim.light.StarReach;
import darkrim.study.star.StarGrid.Square;
import java.util.HashSet;
import java.util.Set;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Has stars aimed at every facet that could throw their light, so that no facet is missed between the middles of squares. Mutable, for one thread. */
final class StarAim {
    /** Pieces of facets that are aimed at are no larger than this share of the region. */
    private static final double PIECE = 1.0 / 32;
    /** Bands of fewer of the finest squares than this are aimed at all along: the middles of squares show their edges too coarsely, or miss them. */
    private static final double NARROW = 4;

    private final StarReach reach;
    private final StarGrid grid;
    private final StarChange change;
    private final double finest;
    private final double piece;
    /** Where stars were aimed. */
    private final Set<Spot> aimed = new HashSet<>();

    /**
     * @param finest width of the finest squares, mm
     */
    StarAim(StarReach reach, StarGrid grid, StarRegion region, StarChange change, double finest) {
        this.reach = reach;
        this.grid = grid;
        this.change = change;
        this.finest = finest;
        piece = PIECE * Math.max(region.width(), region.height());
    }

    /** Has a star aimed at each piece of each side. */
    void atEverySide() {
        for (StarReach.Side side : reach.sides()) {
            aim(side, piece);
        }
    }

    /**
     * Where the middles of squares could lie beside the band of a side, pieces of it that are as small as the finest squares are aimed at, if one of its
     * larger pieces throws light.
     *
     * @param room once more than so many positions are due, no further side is aimed at
     * @return whether all were aimed at
     */
    boolean alongNarrowBands(int room) {
        Set<Spot> bright = bright();
        boolean all = true;
        long due = 0;
        for (StarReach.Side side : reach.sides()) {
            boolean throwsLight = reach.narrowest(side) < NARROW * finest
                    && reach.seeds(side, piece).stream().anyMatch(seed -> bright.contains(new Spot(seed, finest)));
            if (throwsLight && due < room) {
                int before = aimed.size();
                aim(side, finest);
                due += aimed.size() - before;
            } else if (throwsLight) {
                all = false;
            }
        }
        return all;
    }

    /** Where light that matters was found. */
    private Set<Spot> bright() {
        Set<Spot> bright = new HashSet<>();
        for (Square square : grid.squares()) {
            for (StarPosition each : square.positions) {
                if (change.matters(each.share())) {
                    bright.add(new Spot(Vector2D.of(each.x(), each.y()), finest));
                }
            }
        }
        return bright;
    }

    /** Has a star aimed at each piece of a side, no two of them within one of the finest squares. */
    private void aim(StarReach.Side side, double size) {
        for (Vector2D seed : reach.seeds(side, size)) {
            grid.at(seed.getX(), seed.getY()).ifPresent(square -> {
                if (aimed.add(new Spot(seed, finest))) {
                    square.due.add(new double[] {seed.getX(), seed.getY()});
                }
            });
        }
    }

    /** One of the finest squares. */
    private record Spot(long column, long row) {
        Spot(Vector2D at, double width) {
            this((long) Math.floor(at.getX() / width), (long) Math.floor(at.getY() / width));
        }
    }
}
