package darkrim.study.tolerance;

import java.util.ArrayList;
import java.util.List;

/** Corners of the box of all tolerances, as shares of the tolerances: -1 the lower end, 1 the upper. */
final class CornerDesign {
    private CornerDesign() {}

    /**
     * All corners.
     *
     * @param contributors how many, at most 30
     */
    static List<double[]> every(int contributors) {
        List<double[]> corners = new ArrayList<>();
        for (int corner = 0; corner < 1 << contributors; corner++) {
            double[] at = new double[contributors];
            for (int i = 0; i < contributors; i++) {
                at[i] = (corner >> i & 1) == 0 ? -1 : 1;
            }
            corners.add(at);
        }
        return corners;
    }

    /**
     * A two-level design and its mirror image: any three contributors meet in all eight ways, each as often as any other. The rows of a Hadamard
     * matrix of Sylvester's kind, whose columns are square to one another; with the mirror image a product of three columns sums to 0 too. At
     * least twice and less than four times as many corners as contributors.
     */
    static List<double[]> mirrored(int contributors) {
        int rows = 1;
        while (rows < contributors) {
            rows *= 2;
        }
        List<double[]> corners = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            double[] at = new double[contributors];
            double[] opposite = new double[contributors];
            for (int column = 0; column < contributors; column++) {
                at[column] = Integer.bitCount(row & column) % 2 == 0 ? 1 : -1;
                opposite[column] = -at[column];
            }
            corners.add(at);
            corners.add(opposite);
        }
        return corners;
    }
}
