package darkrim.study.star;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The region of a scan as squares that are split into four where light changes. Mutable, for one thread.
 *
 * <p>A square of level k has the number (i, j) in a grid of the coarsest width over 2^k.
 */
final class StarGrid {
    /** Squares along the longer side of the region before any is split. */
    private static final int COARSE = 32;

    /** A square of the grid. */
    static final class Square {
        final int level;
        final int i;
        final int j;
        final List<StarPosition> positions = new ArrayList<>();
        /** Positions to be looked at. */
        final List<double[]> due = new ArrayList<>();

        boolean proved;

        private Square(int level, int i, int j) {
            this.level = level;
            this.i = i;
            this.j = j;
        }
    }

    private record At(int level, int i, int j) {}

    private final StarRegion region;
    private final double coarsest;
    private final int levels;
    private final Map<At, Square> squares = new HashMap<>();

    /**
     * @param finest squares are not split below this width, mm
     */
    StarGrid(StarRegion region, double finest) {
        this.region = region;
        double wanted = Math.max(region.width(), region.height()) / COARSE;
        int halvings = 0;
        while (wanted / (1 << halvings) > finest * (1 + 1e-9) && halvings < 24) {
            halvings++;
        }
        levels = halvings;
        coarsest = Math.max(finest, wanted);
        int columns = (int) Math.max(1, Math.ceil(region.width() / coarsest - 1e-9));
        int rows = (int) Math.max(1, Math.ceil(region.height() / coarsest - 1e-9));
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                put(new Square(0, i, j));
            }
        }
    }

    private void put(Square square) {
        squares.put(new At(square.level, square.i, square.j), square);
    }

    /** Width of squares that are split no further, mm. */
    double finest() {
        return coarsest / (1 << levels);
    }

    /** In which column of the finest squares a position lies, or would lie. */
    int finestColumn(double x) {
        return (int) Math.floor((x - region.fromX()) / finest());
    }

    /** Likewise in which row. */
    int finestRow(double y) {
        return (int) Math.floor((y - region.fromY()) / finest());
    }

    /** All squares, by level, row, column. */
    List<Square> squares() {
        return squares.values().stream()
                .sorted(Comparator.<Square>comparingInt(each -> each.level)
                        .thenComparingInt(each -> each.j)
                        .thenComparingInt(each -> each.i))
                .toList();
    }

    double width(Square square) {
        return coarsest / (1 << square.level);
    }

    double x(Square square) {
        return region.fromX() + (square.i + 0.5) * width(square);
    }

    double y(Square square) {
        return region.fromY() + (square.j + 0.5) * width(square);
    }

    boolean canBeSplit(Square square) {
        return square.level < levels;
    }

    /** The square in which a position lies; empty outside the region. */
    Optional<Square> at(double x, double y) {
        double u = (x - region.fromX()) / coarsest;
        double v = (y - region.fromY()) / coarsest;
        for (int level = 0; level <= levels; level++) {
            int times = 1 << level;
            Square found = squares.get(new At(level, (int) Math.floor(u * times), (int) Math.floor(v * times)));
            if (found != null) {
                return Optional.of(found);
            }
        }
        return Optional.empty();
    }

    /** Squares that share a side with one, however small, once each. */
    List<Square> neighbours(Square square) {
        double half = 0.5 * width(square);
        double x = x(square);
        double y = y(square);
        double step = finest();
        double out = half + 0.5 * step;
        Set<Square> found = new LinkedHashSet<>();
        for (double along = 0.5 * step - half; along < half; along += step) {
            for (double side : new double[] {-out, out}) {
                at(x + side, y + along).ifPresent(found::add);
                at(x + along, y + side).ifPresent(found::add);
            }
        }
        return List.copyOf(found);
    }

    /** Splits a square into four, which share what was looked at in it; each is still to be looked at in its middle. */
    List<Square> split(Square square) {
        squares.remove(new At(square.level, square.i, square.j));
        List<Square> four = new ArrayList<>();
        for (int part = 0; part < 4; part++) {
            Square each = new Square(square.level + 1, 2 * square.i + part % 2, 2 * square.j + part / 2);
            put(each);
            four.add(each);
        }
        for (StarPosition position : square.positions) {
            // A position on the border of the region by rounding stays with the nearest.
            at(position.x(), position.y())
                    .filter(four::contains)
                    .orElse(four.get(0))
                    .positions
                    .add(position);
        }
        return four;
    }
}
