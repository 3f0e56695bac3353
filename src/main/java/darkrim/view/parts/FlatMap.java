package darkrim.view.parts;

import darkrim.scene.CellGrid;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The map of a flat surface, seen from its front: columns to the right, rows upward, in mm from the corner of the first cell.
 *
 * @param map the map
 * @param grid its cells
 * @param width width, mm
 * @param height height, mm
 */
public record FlatMap(SurfaceMap map, CellGrid grid, double width, double height) {
    /**
     * A value along a line.
     *
     * @param distance from the beginning of the line, mm
     * @param value relative irradiance of the cell there; NaN beside the surface or where it is not known
     * @param error its standard error
     */
    public record Sample(double distance, double value, double error) {}

    /** The flat map of a map; empty for that of a curved surface. */
    public static Optional<FlatMap> of(SurfaceMap map) {
        return map.cells()
                .grid()
                .map(grid -> new FlatMap(
                        map, grid, grid.alongU().norm(), grid.alongV().norm()));
    }

    /** The cell at a place, mm; empty beside the surface. */
    public Optional<Integer> cell(double x, double y) {
        int column = (int) Math.floor(x / width * grid.columns());
        int row = (int) Math.floor(y / height * grid.rows());
        boolean inside = column >= 0 && row >= 0 && column < grid.columns() && row < grid.rows();
        int cell = column + grid.columns() * row;
        return inside && !map.cells().isEmpty(cell) ? Optional.of(cell) : Optional.empty();
    }

    /**
     * The values along a straight line, at even steps.
     *
     * @param kind which light
     * @param from its beginning: x, y, mm
     * @param to its end
     * @param steps number of steps, at least 1
     */
    public List<Sample> profile(LightKind kind, double[] from, double[] to, int steps) {
        double length = Math.hypot(to[0] - from[0], to[1] - from[1]);
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            double share = (double) i / steps;
            Optional<Integer> cell = cell(from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]));
            samples.add(new Sample(
                    share * length,
                    cell.map(there -> map.value(kind, there)).orElse(Double.NaN),
                    cell.map(there -> map.error(kind, there)).orElse(Double.NaN)));
        }
        return samples;
    }
}
