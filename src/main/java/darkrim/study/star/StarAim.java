package darkrim.study.star;

import darkrim.light.FacetAims;
import darkrim.light.FacetAims.Aim;
import darkrim.light.StarReach;
import darkrim.study.star.StarGrid.Square;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Has stars aimed at every facet that could throw their light, so that no facet is missed between the middles of squares. No flat takes the star of
 * another: what one throws says nothing of its neighbour. Mutable, for one thread.
 */
final class StarAim {
    /** Pieces of facets that are aimed at are no larger than this share of the region. */
    private static final double PIECE = 1.0 / 32;
    /** Bands of fewer of the finest squares than this are aimed at all along: the middles of squares show their edges too coarsely, or miss them. */
    private static final double NARROW = 4;
    /** Steps along such bands, as a part of the finest squares: of a square that a band crosses by less than this, all lies near a neighbour. */
    private static final double STEP = 0.5;

    private final StarReach reach;
    private final FacetAims aims;
    private final StarGrid grid;
    private final StarChange change;
    private final double piece;
    /** Where stars were aimed. */
    private final Set<Aimed> aimed = new HashSet<>();
    /** So many more may be. */
    private int room;

    StarAim(StarReach reach, FacetAims aims, StarGrid grid, StarRegion region, StarChange change) {
        this.reach = reach;
        this.aims = aims;
        this.grid = grid;
        this.change = change;
        piece = PIECE * Math.max(region.width(), region.height());
    }

    /**
     * Has stars aimed at each piece of each side.
     *
     * @param most no more positions become due
     * @return whether all were aimed at
     */
    boolean atEverySide(int most) {
        room = most;
        List<StarReach.Side> sides = reach.sides();
        List<List<Aim>> all = sides.stream().map(this::atLarge).toList();
        int ranks = all.stream().flatMap(List::stream).mapToInt(Aim::rank).max().orElse(-1);
        // The first star of each piece before the second of any.
        for (int rank = 0; rank <= ranks; rank++) {
            for (int i = 0; i < sides.size(); i++) {
                for (Aim aim : all.get(i)) {
                    if (aim.rank() == rank && !aim(sides.get(i), aim, 0)) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private List<Aim> atLarge(StarReach.Side side) {
        return aims.of(side, piece, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /**
     * Where the middles of squares could lie beside the band of a piece of a side, stars are aimed at it in each of the finest squares that it crosses, if
     * one of its larger pieces throws light.
     *
     * @param most no more positions become due
     * @return whether all were aimed at
     */
    boolean alongNarrowBands(int most) {
        room = most;
        double narrow = NARROW * grid.finest();
        Set<Spot> bright = bright();
        for (StarReach.Side side : reach.sides()) {
            boolean throwsLight = aims.narrowest(side) < narrow
                    && atLarge(side).stream().anyMatch(aim -> bright.contains(spot(aim.focus())));
            if (!throwsLight) {
                continue;
            }
            for (Aim aim : aims.of(side, Math.min(piece, narrow), STEP * grid.finest(), narrow)) {
                // A band within one square differs across it: each point of the pupil has its own star.
                int look = aim.band() < grid.finest() ? aim.rank() : 0;
                if (!aim(side, aim, look)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Where light that matters was found. */
    private Set<Spot> bright() {
        Set<Spot> bright = new HashSet<>();
        for (Square square : grid.squares()) {
            for (StarPosition each : square.positions) {
                if (change.matters(each.share())) {
                    bright.add(spot(Vector2D.of(each.x(), each.y())));
                }
            }
        }
        return bright;
    }

    /** Has a star aimed at a piece unless one was at its flat in the same of the finest squares; false if there is no room for it. */
    private boolean aim(StarReach.Side side, Aim aim, int look) {
        Vector2D focus = aim.focus();
        Optional<Square> square = grid.at(focus.getX(), focus.getY());
        Flat flat = aim.seen() ? new Flat(side.surface(), side.plane()) : Flat.HIDDEN;
        Aimed at = new Aimed(flat, look, spot(focus));
        if (square.isEmpty() || aimed.contains(at)) {
            return true;
        }
        if (room == 0) {
            return false;
        }
        room--;
        aimed.add(at);
        square.get().due.add(new double[] {focus.getX(), focus.getY()});
        return true;
    }

    private Spot spot(Vector2D at) {
        return new Spot(grid.finestColumn(at.getX()), grid.finestRow(at.getY()));
    }

    /** One of the finest squares. */
    private record Spot(int column, int row) {}

    /** Facets of one surface in one plane. */
    private record Flat(int surface, int plane) {
        /** All that is seen from no point of the pupil that was looked from. */
        static final Flat HIDDEN = new Flat(-1, -1);
    }

    private record Aimed(Flat flat, int look, Spot at) {}
}
