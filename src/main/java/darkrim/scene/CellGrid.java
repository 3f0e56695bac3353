package darkrim.scene;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A rectangle split into equal cells, for maps. Cell (i, j) is the i-th along {@code alongU} and the j-th along {@code alongV}; its number
 * is {@code i + columns * j}.
 *
 * @param origin the corner of cell (0, 0), mm
 * @param alongU the whole first side, mm
 * @param alongV the whole second side, mm, square to the first
 * @param columns number of cells along the first side
 * @param rows number of cells along the second side
 */
public record CellGrid(Vector3D origin, Vector3D alongU, Vector3D alongV, int columns, int rows) {
    /**
     * @throws IllegalArgumentException if there is no cell
     */
    public CellGrid {
        if (columns < 1 || rows < 1) {
            throw new IllegalArgumentException("a map needs cells, got " + columns + " x " + rows);
        }
    }

    /** Number of cells. */
    public int count() {
        return columns * rows;
    }

    /** The point at shares s, t (0 to 1) of the two sides, mm. */
    public Vector3D at(double s, double t) {
        return Vector3D.Sum.create()
                .add(origin)
                .addScaled(s, alongU)
                .addScaled(t, alongV)
                .get();
    }
}
