package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Fields;
import java.util.List;
import java.util.Optional;

/**
 * A grid of detectors or openings.
 *
 * @param columns number along x
 * @param rows number along y
 * @param stepX step along x, mm; 0 where there is one column and no step is given
 * @param stepY step along y, mm; likewise
 */
record GridFields(int columns, int rows, double stepX, double stepY) {
    /** From the keys {@code grid} and {@code spacing}; empty, with a finding, where a needed spacing is missing. */
    static Optional<GridFields> of(Fields fields, Findings findings) {
        List<Integer> grid = fields.counts("grid");
        if (!fields.has("spacing")) {
            if (grid.get(0) * grid.get(1) == 1) {
                return Optional.of(new GridFields(1, 1, 0, 0));
            }
            findings.error(
                    "missing-spacing",
                    fields.place("grid"),
                    "a grid of " + grid.get(0) + " by " + grid.get(1)
                            + " needs the key 'spacing', expected the step from centre to centre");
            return Optional.empty();
        }
        List<Double> spacing = fields.numbers("spacing");
        return Optional.of(new GridFields(grid.get(0), grid.get(1), spacing.get(0), spacing.get(spacing.size() - 1)));
    }

    int count() {
        return columns * rows;
    }
}
