package darkrim.view.parts;

import darkrim.study.irradiance.SurfaceCells;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The cells of a map as triangles, each with the number of its cell. */
public final class CellTriangles {
    private final double[] corners;
    private final int[] cells;

    /**
     * @param split a surface split into cells
     */
    public CellTriangles(SurfaceCells split) {
        List<Integer> tags = new ArrayList<>();
        List<Vector3D> places = new ArrayList<>();
        for (int cell : split.filled()) {
            for (List<Vector3D> polygon : split.polygons(cell)) {
                for (int i = 1; i + 1 < polygon.size(); i++) {
                    tags.add(cell);
                    places.add(polygon.get(0));
                    places.add(polygon.get(i));
                    places.add(polygon.get(i + 1));
                }
            }
        }
        cells = tags.stream().mapToInt(tag -> tag).toArray();
        corners = new double[3 * places.size()];
        for (int i = 0; i < places.size(); i++) {
            corners[3 * i] = places.get(i).getX();
            corners[3 * i + 1] = places.get(i).getY();
            corners[3 * i + 2] = places.get(i).getZ();
        }
    }

    /** Nine coordinates a triangle, mm. */
    public double[] corners() {
        return corners.clone();
    }

    /** The cell that a triangle belongs to. */
    public int cell(int triangle) {
        return cells[triangle];
    }
}
