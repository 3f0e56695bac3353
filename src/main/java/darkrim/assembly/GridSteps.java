package darkrim.assembly;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * The places of a grid about its middle. The grid's one place has no number; of several, place (i, j) is numbered {@code [i,j]}, from 1
 * along x and y.
 */
final class GridSteps {
    /** More places than this are taken for a slip of the pen. */
    private static final int MOST = 40_000;

    private GridSteps() {}

    /**
     * A place in a grid.
     *
     * @param number {@code [i,j]}, or empty for the only place
     * @param offset from the middle of the grid, mm
     */
    record Step(String number, Vector2D offset) {}

    /**
     * All places, along x first.
     *
     * @throws IllegalArgumentException if there are none or too many
     */
    static List<Step> of(int columns, int rows, double stepX, double stepY) {
        if (columns < 1 || rows < 1 || (long) columns * rows > MOST) {
            throw new IllegalArgumentException(
                    "a grid needs from 1 to " + MOST + " places, got " + columns + " x " + rows);
        }
        List<Step> steps = new ArrayList<>();
        for (int j = 1; j <= rows; j++) {
            for (int i = 1; i <= columns; i++) {
                String number = columns * rows == 1 ? "" : "[" + i + "," + j + "]";
                steps.add(new Step(number, Vector2D.of(fromMiddle(i, columns) * stepX, fromMiddle(j, rows) * stepY)));
            }
        }
        return steps;
    }

    /** The name of the part that a path begins with, without the number of a copy: {@code lid} of {@code lid[1,2]/top}. */
    static String partOf(String path) {
        return path.split("/", 2)[0].replaceFirst("\\[.*", "");
    }

    private static double fromMiddle(int index, int count) {
        return index - (count + 1) / 2.0;
    }
}
