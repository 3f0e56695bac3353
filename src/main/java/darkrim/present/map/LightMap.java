package darkrim.present.map;

import darkrim.present.picture.LightUnit;
import darkrim.scene.CellGrid;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * One class of light on one flat surface, cell by cell.
 *
 * @param map the map, of a flat surface
 * @param kind which light
 * @param unit in what its values are given
 */
public record LightMap(SurfaceMap map, LightKind kind, LightUnit unit) {
    /** A direction that differs from an axis by less than this is that axis. */
    private static final double SAME = 1e-9;

    /** One side of the map as an axis. */
    public enum Side {
        /** Along the columns. */
        COLUMNS,
        /** Along the rows. */
        ROWS
    }

    /**
     * @throws IllegalArgumentException if the surface is not flat
     */
    public LightMap {
        if (map.cells().grid().isEmpty()) {
            throw new IllegalArgumentException(map.cells().surface().name() + " is not flat");
        }
    }

    /** Name of the surface. */
    public String surface() {
        return map.cells().surface().name();
    }

    /** The cells. */
    public CellGrid grid() {
        return map.cells().grid().orElseThrow();
    }

    /** Value of a cell in the unit; NaN beside the outline of the surface, or where nothing was sampled. */
    public double value(int column, int row) {
        return map.value(kind, column + grid().columns() * row) * unit.perRelative();
    }

    /** Standard error of a value in the unit; NaN where there is no value. */
    public double error(int column, int row) {
        return Double.isNaN(value(column, row))
                ? Double.NaN
                : map.error(kind, column + grid().columns() * row) * unit.perRelative();
    }

    /** Mean over the surface in the unit. */
    public double mean() {
        return map.mean(kind) * unit.perRelative();
    }

    /** Standard error of the mean in the unit. */
    public double meanError() {
        return map.meanError(kind) * unit.perRelative();
    }

    /** Whether this light is proved to be none. */
    public DarkProof proof() {
        return kind == LightKind.DIRECT ? map.proof() : DarkProof.NONE;
    }

    /** Middle of a cell, mm. */
    public Vector3D middle(int column, int row) {
        return grid().at((column + 0.5) / grid().columns(), (row + 0.5) / grid().rows());
    }

    /** Which way a side runs, unit length. */
    public Vector3D direction(Side side) {
        return (side == Side.COLUMNS ? grid().alongU() : grid().alongV()).normalize();
    }

    /** Length of a cell along a side, mm. */
    public double step(Side side) {
        return side == Side.COLUMNS
                ? grid().alongU().norm() / grid().columns()
                : grid().alongV().norm() / grid().rows();
    }

    /** Name of a side: the axis of the layout along which it runs, X, Y or Z, otherwise U or V. */
    public String axis(Side side) {
        double[] way = direction(side).toArray();
        for (int axis = 0; axis < 3; axis++) {
            if (Math.abs(way[axis] - 1) < SAME) {
                return "XYZ".substring(axis, axis + 1);
            }
        }
        return side == Side.COLUMNS ? "U" : "V";
    }

    /**
     * Coordinate of the middle of the first cell along a side, mm: where the side runs along an axis of the layout the coordinate of the layout, otherwise
     * counted along the side from the origin of the layout.
     */
    public double first(Side side) {
        return middle(0, 0).dot(direction(side));
    }
}
