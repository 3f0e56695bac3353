package darkrim.study.irradiance;

import darkrim.light.Estimate;
import java.util.Collections;
import java.util.List;

/**
 * Irradiance over a surface, relative to that of the unobstructed pupil at the origin: the mean of each cell, with its standard error.
 * Immutable; growing finer makes a new one.
 *
 * @param cells the cells
 * @param proof whether the surface is proved to get no direct light, or is dark behind the facets: its direct light on the facets is then exactly 0
 * @param direct sampled direct light of each cell
 * @param reflected sampled once-reflected light of each cell
 * @param rounds how often samples were added
 */
public record SurfaceMap(
        SurfaceCells cells, DarkProof proof, List<Estimate> direct, List<Estimate> reflected, int rounds) {
    /** Copies the lists. */
    public SurfaceMap {
        direct = List.copyOf(direct);
        reflected = List.copyOf(reflected);
    }

    /** Nothing sampled yet. */
    public static SurfaceMap unsampled(SurfaceCells cells, DarkProof proof) {
        List<Estimate> none = Collections.nCopies(cells.count(), Estimate.none(Double.POSITIVE_INFINITY));
        return new SurfaceMap(cells, proof, none, none, 0);
    }

    /** The same light in another unit. */
    public SurfaceMap times(double factor) {
        return factor == 1
                ? this
                : new SurfaceMap(
                        cells,
                        proof,
                        direct.stream().map(each -> each.times(factor)).toList(),
                        reflected.stream().map(each -> each.times(factor)).toList(),
                        rounds);
    }

    /** Irradiance of a cell; NaN where the cell is empty or nothing was sampled yet. */
    public double value(LightKind kind, int cell) {
        return switch (kind) {
            case DIRECT -> directValue(cell);
            case ONCE_REFLECTED -> mean(reflected.get(cell));
            case TOTAL -> directValue(cell) + mean(reflected.get(cell));
        };
    }

    /** Standard error of {@link #value}; infinite where there are fewer than two samples, 0 where it is exact. */
    public double error(LightKind kind, int cell) {
        double ofDirect = isDark() ? 0 : direct.get(cell).standardError();
        double ofReflected = reflected.get(cell).standardError();
        return switch (kind) {
            case DIRECT -> ofDirect;
            case ONCE_REFLECTED -> ofReflected;
            case TOTAL -> Math.sqrt(ofDirect * ofDirect + ofReflected * ofReflected);
        };
    }

    /** Mean over the surface; NaN where a cell was not sampled yet. */
    public double mean(LightKind kind) {
        double sum = 0;
        double area = 0;
        for (int cell : cells.filled()) {
            sum += cells.area(cell) * value(kind, cell);
            area += cells.area(cell);
        }
        return sum / area;
    }

    /** Standard error of {@link #mean}; cells are sampled independently. */
    public double meanError(LightKind kind) {
        double squares = 0;
        double area = 0;
        for (int cell : cells.filled()) {
            double error = cells.area(cell) * error(kind, cell);
            squares += error * error;
            area += cells.area(cell);
        }
        return Math.sqrt(squares) / area;
    }

    /** Whether no direct light reaches its facets: proved, so that none is sampled. */
    public boolean isDark() {
        return proof != DarkProof.NONE;
    }

    private double directValue(int cell) {
        return isDark() && !cells.isEmpty(cell) ? 0 : mean(direct.get(cell));
    }

    private static double mean(Estimate estimate) {
        return estimate.samples() == 0 ? Double.NaN : estimate.mean();
    }
}
