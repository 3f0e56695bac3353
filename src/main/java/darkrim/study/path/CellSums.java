package darkrim.study.path;

import darkrim.light.TracedPath;
import darkrim.study.irradiance.SurfaceCells;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What one path brings by each cell of a surface. Mutable, for one thread; grows with the cells that are met, not with the ways. */
final class CellSums {
    private final SurfaceCells cells;
    private final Map<Integer, Sums> by = new TreeMap<>();

    private static final class Sums {
        private double value;
        private double squares;
        private double x;
        private double y;
        private double z;
        private double greatest;
        private double[] example = {};

        private void add(Sums other) {
            value += other.value;
            squares += other.squares;
            x += other.x;
            y += other.y;
            z += other.z;
            if (other.greatest > greatest) {
                greatest = other.greatest;
                example = other.example;
            }
        }
    }

    CellSums(SurfaceCells cells) {
        this.cells = cells;
    }

    /** Adds a way that passes by the surface at one of its points. */
    void add(TracedPath way, int point, double value) {
        double x = way.at(point, 0);
        double y = way.at(point, 1);
        double z = way.at(point, 2);
        Sums sums = by.computeIfAbsent(cells.cellAt(way.facet(point), x, y, z), cell -> new Sums());
        sums.value += value;
        sums.squares += value * value;
        sums.x += value * x;
        sums.y += value * y;
        sums.z += value * z;
        if (value > sums.greatest) {
            sums.greatest = value;
            copy(way, sums);
        }
    }

    private static void copy(TracedPath way, Sums sums) {
        int numbers = 3 * (way.order() + 2);
        if (sums.example.length != numbers) {
            sums.example = new double[numbers];
        }
        for (int i = 0; i < numbers; i++) {
            sums.example[i] = way.at(i / 3, i % 3);
        }
    }

    void add(CellSums other) {
        other.by.forEach(
                (cell, sums) -> by.computeIfAbsent(cell, key -> new Sums()).add(sums));
    }

    /**
     * The cell with the greatest density that is sure: less two standard errors, so that a cut-off corner with a single way does not win.
     * Where none is sure, the cell by which most comes.
     */
    private Map.Entry<Integer, Sums> brightest() {
        Map.Entry<Integer, Sums> best = null;
        Map.Entry<Integer, Sums> fullest = null;
        double most = 0;
        for (Map.Entry<Integer, Sums> each : by.entrySet()) {
            Sums sums = each.getValue();
            double density = (sums.value - 2 * Math.sqrt(sums.squares)) / cells.area(each.getKey());
            if (density > most) {
                most = density;
                best = each;
            }
            if (fullest == null || sums.value > fullest.getValue().value) {
                fullest = each;
            }
        }
        return best != null ? best : fullest;
    }

    /**
     * The brightest cell; needs at least one way.
     *
     * @param whole what the path brings in all
     */
    Spot spot(double whole) {
        Map.Entry<Integer, Sums> cell = brightest();
        Sums sums = cell.getValue();
        return new Spot(
                Vector3D.of(sums.x / sums.value, sums.y / sums.value, sums.z / sums.value),
                sums.value / whole,
                cells.area(cell.getKey()));
    }

    /** The strongest way by the brightest cell, mm; needs at least one way. */
    List<Vector3D> example() {
        double[] numbers = brightest().getValue().example;
        List<Vector3D> points = new ArrayList<>();
        for (int i = 0; i < numbers.length; i += 3) {
            points.add(Vector3D.of(numbers[i], numbers[i + 1], numbers[i + 2]));
        }
        return points;
    }
}
