package darkrim.present.drawing;

import darkrim.layout.form.Wording;

/**
 * A scale of a drawing: 1, 2 or 5 times a power of ten (as ISO 5455 recommends; from memory).
 *
 * @param paper mm on paper for each mm of the layout
 */
public record DrawnScale(double paper) {
    private static final double[] STEPS = {1, 2, 5};

    /** The largest with which a width and a height, mm, fit into a box; what has neither is drawn at 100 : 1 at most. */
    static DrawnScale fitting(double width, double height, Box box) {
        double most = Math.min(100, Math.min(box.width() / width, box.height() / height));
        double best = 0;
        for (int power = -9; power <= 2; power++) {
            double ten = Double.parseDouble("1e" + power);
            for (double step : STEPS) {
                if (step * ten <= most) {
                    best = step * ten;
                }
                double reduced = 1 / (step * ten);
                if (reduced <= most && reduced > best) {
                    best = reduced;
                }
            }
        }
        return new DrawnScale(best > 0 ? best : most);
    }

    /** Such as {@code 2:1} or {@code 1:50}. */
    public String words() {
        return paper >= 1 ? Wording.number(paper) + ":1" : "1:" + Wording.number(1 / paper);
    }

    /** A round length of the layout that takes at most a width on paper, mm. */
    double round(double width) {
        double most = width / paper;
        double best = 1e-9;
        for (int power = -6; power <= 6; power++) {
            for (double step : STEPS) {
                double length = step * Double.parseDouble("1e" + power);
                best = length <= most ? length : best;
            }
        }
        return best;
    }
}
