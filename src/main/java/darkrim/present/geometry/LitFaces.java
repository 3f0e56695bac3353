package darkrim.present.geometry;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.irradiance.SurfaceMap;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The triangles of one surface, each with the cell of a map that it belongs to. They face the side from which the surface is seen: the back of a sheet has
 * triangles of its own.
 *
 * @param surface the surface
 * @param map the light on it
 * @param triangles three corners a triangle, mm
 * @param cells cell of each triangle
 */
public record LitFaces(Surface surface, SurfaceMap map, List<List<Vector3D>> triangles, List<Integer> cells) {
    /** Copies the lists. */
    public LitFaces {
        triangles = List.copyOf(triangles);
        cells = List.copyOf(cells);
    }

    /** The triangles of a surface: each piece of a cell as a fan about its first corner. */
    public static LitFaces of(Scene scene, SurfaceMap map) {
        Surface surface = map.cells().surface();
        if (surface.index() >= scene.surfaces().size()) {
            throw new IllegalArgumentException(surface.name() + " is no surface of the scene");
        }
        List<List<Vector3D>> triangles = new ArrayList<>();
        List<Integer> cells = new ArrayList<>();
        for (int cell : map.cells().filled()) {
            for (List<Vector3D> piece : map.cells().polygons(cell)) {
                for (int i = 1; i + 1 < piece.size(); i++) {
                    Vector3D second = piece.get(surface.back() ? i + 1 : i);
                    Vector3D third = piece.get(surface.back() ? i : i + 1);
                    triangles.add(List.of(piece.get(0), second, third));
                    cells.add(cell);
                }
            }
        }
        return new LitFaces(surface, map, triangles, cells);
    }

    /** Name of the part that the surface belongs to. */
    String part() {
        return surface.name().split("/", 2)[0].replaceFirst("\\[.*", "");
    }
}
