package darkrim.study.irradiance;

import darkrim.light.Patch.Piece;
import darkrim.scene.CellGrid;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Clips the facets of a flat surface to the cells of a grid, side by side (Sutherland and Hodgman, "Reentrant polygon clipping", CACM 17(1),
 * 1974). Corners are kept as weights of the facet's corners, so that pieces lie in the facet whatever the rounding.
 */
final class GridClip {
    /** Numbers of a corner: weights a and b, place along the columns and the rows in cells. */
    private static final int NUMBERS = 4;
    /** A piece of less than this share of a cell is rounding. */
    private static final double ROUNDING = 1e-9;

    private final Scene scene;
    private final Surface surface;
    private final CellGrid grid;

    GridClip(Scene scene, Surface surface, CellGrid grid) {
        this.scene = scene;
        this.surface = surface;
        this.grid = grid;
    }

    /** The pieces of each cell, by number. */
    List<List<Piece>> cells() {
        List<List<Piece>> cells = new ArrayList<>();
        for (int cell = 0; cell < grid.count(); cell++) {
            cells.add(new ArrayList<>());
        }
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            split(f, corners(f), cells);
        }
        return cells;
    }

    private double[] corners(int facet) {
        double[] corners = new double[3 * NUMBERS];
        for (int k = 0; k < 3; k++) {
            corners[NUMBERS * k] = k == 0 ? 1 : 0;
            corners[NUMBERS * k + 1] = k == 1 ? 1 : 0;
            Vector3D from = scene.corner(facet, k).subtract(grid.origin());
            corners[NUMBERS * k + 2] = from.dot(grid.alongU()) / grid.alongU().normSq() * grid.columns();
            corners[NUMBERS * k + 3] = from.dot(grid.alongV()) / grid.alongV().normSq() * grid.rows();
        }
        return corners;
    }

    private void split(int facet, double[] corners, List<List<Piece>> cells) {
        int last = last(corners, 2, grid.columns());
        for (int column = first(corners, 2); column <= last; column++) {
            double[] strip = clip(clip(corners, 2, column, true), 2, column + 1, false);
            if (strip.length == 0) {
                continue;
            }
            int lastRow = last(strip, 3, grid.rows());
            for (int row = first(strip, 3); row <= lastRow; row++) {
                double[] part = clip(clip(strip, 3, row, true), 3, row + 1, false);
                if (area(part) > ROUNDING) {
                    cells.get(column + grid.columns() * row).add(new Piece(facet, weights(part)));
                }
            }
        }
    }

    private static int first(double[] corners, int which) {
        double least = Double.POSITIVE_INFINITY;
        for (int at = which; at < corners.length; at += NUMBERS) {
            least = Math.min(least, corners[at]);
        }
        return Math.max(0, (int) Math.floor(least));
    }

    private static int last(double[] corners, int which, int count) {
        double most = Double.NEGATIVE_INFINITY;
        for (int at = which; at < corners.length; at += NUMBERS) {
            most = Math.max(most, corners[at]);
        }
        return Math.min(count - 1, (int) Math.floor(most));
    }

    /** The part where a number is no less, or no more, than a bound. */
    private static double[] clip(double[] corners, int which, double bound, boolean above) {
        double[] kept = new double[2 * corners.length + 2 * NUMBERS];
        int size = 0;
        int count = corners.length / NUMBERS;
        for (int i = 0, j = count - 1; i < count; j = i++) {
            double from = side(corners[NUMBERS * j + which], bound, above);
            double to = side(corners[NUMBERS * i + which], bound, above);
            if ((from < 0) != (to < 0)) {
                double share = from / (from - to);
                for (int k = 0; k < NUMBERS; k++) {
                    kept[size + k] =
                            corners[NUMBERS * j + k] + share * (corners[NUMBERS * i + k] - corners[NUMBERS * j + k]);
                }
                size += NUMBERS;
            }
            if (to >= 0) {
                System.arraycopy(corners, NUMBERS * i, kept, size, NUMBERS);
                size += NUMBERS;
            }
        }
        return size < 3 * NUMBERS ? new double[0] : Arrays.copyOf(kept, size);
    }

    private static double side(double value, double bound, boolean above) {
        return above ? value - bound : bound - value;
    }

    /** Area in cells. */
    private static double area(double[] corners) {
        double sum = 0;
        int count = corners.length / NUMBERS;
        for (int i = 0, j = count - 1; i < count; j = i++) {
            sum += corners[NUMBERS * j + 2] * corners[NUMBERS * i + 3]
                    - corners[NUMBERS * i + 2] * corners[NUMBERS * j + 3];
        }
        return Math.abs(sum) / 2;
    }

    private static double[] weights(double[] corners) {
        double[] weights = new double[corners.length / NUMBERS * 2];
        for (int i = 0; i < corners.length / NUMBERS; i++) {
            weights[2 * i] = corners[NUMBERS * i];
            weights[2 * i + 1] = corners[NUMBERS * i + 1];
        }
        return weights;
    }
}
