package darkrim.study.irradiance;

import darkrim.light.Patch;
import darkrim.light.Patch.Piece;
import darkrim.scene.CellGrid;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.SurfaceRectangle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A surface split into cells, none of which overlap and which fill it. A flat surface: equal cells of the rectangle around it in its own plane
 * (see {@link SurfaceRectangle}), each clipped to the facets; cell (i, j) has the number {@code i + columns * j}, and cells that lie beside the
 * outline are empty. Any other surface: its facets. Or the whole surface as one cell. Immutable.
 */
public final class SurfaceCells {
    private final Scene scene;
    private final Surface surface;
    private final Optional<CellGrid> grid;
    private final boolean whole;
    private final List<List<Piece>> pieces;
    private final List<Patch> patches;

    private SurfaceCells(
            Scene scene, Surface surface, Optional<CellGrid> grid, boolean whole, List<List<Piece>> pieces) {
        this.scene = scene;
        this.surface = surface;
        this.grid = grid;
        this.whole = whole;
        this.pieces = List.copyOf(pieces);
        String kind = grid.map(cells -> cells.columns() + "x" + cells.rows()).orElse(whole ? "whole" : "facets");
        patches = IntStream.range(0, pieces.size())
                .mapToObj(cell ->
                        new Patch(surface.name() + " map " + kind + " " + cell, scene, surface, this.pieces.get(cell)))
                .toList();
    }

    /**
     * Cells that are about square.
     *
     * @param along number of cells along the longer side of a flat surface, at least 1
     */
    public static SurfaceCells of(Scene scene, Surface surface, int along) {
        if (!isFlat(scene, surface)) {
            return facets(scene, surface);
        }
        SurfaceRectangle rectangle = SurfaceRectangle.of(scene, surface);
        double wide = rectangle.alongU().norm();
        double high = rectangle.alongV().norm();
        double cell = Math.max(wide, high) / along;
        int columns = Math.max(1, (int) Math.round(wide / cell));
        int rows = Math.max(1, (int) Math.round(high / cell));
        CellGrid grid = new CellGrid(rectangle.corner(), rectangle.alongU(), rectangle.alongV(), columns, rows);
        return new SurfaceCells(scene, surface, Optional.of(grid), false, new GridClip(scene, surface, grid).cells());
    }

    /** Whether these are cells of a surface of this very scene; one with the same names may be another position of it. */
    public boolean isOf(Scene other) {
        return scene == other;
    }

    /** The whole surface as one cell. */
    public static SurfaceCells whole(Scene scene, Surface surface) {
        return new SurfaceCells(scene, surface, Optional.empty(), true, List.of(facetPieces(surface)));
    }

    /** Each facet as a cell. */
    public static SurfaceCells facets(Scene scene, Surface surface) {
        return new SurfaceCells(
                scene,
                surface,
                Optional.empty(),
                false,
                facetPieces(surface).stream().map(List::of).toList());
    }

    /** Whether all facets of a surface lie in one plane and face the same way. */
    public static boolean isFlat(Scene scene, Surface surface) {
        return SurfaceRectangle.isAround(scene, surface);
    }

    private static List<Piece> facetPieces(Surface surface) {
        return IntStream.range(surface.firstFacet(), surface.firstFacet() + surface.facetCount())
                .mapToObj(f -> new Piece(f, 1, 0, 0, 1, 0, 0))
                .toList();
    }

    /** The surface. */
    public Surface surface() {
        return surface;
    }

    /** The grid of a flat surface; empty for facets and for a whole surface. */
    public Optional<CellGrid> grid() {
        return grid;
    }

    /** Number of cells, the empty ones with them. */
    public int count() {
        return patches.size();
    }

    /** Area of a cell, mm2; 0 for one that is empty. */
    public double area(int cell) {
        return patches.get(cell).area();
    }

    /** Whether a cell of a grid lies beside the outline of the surface. */
    public boolean isEmpty(int cell) {
        return !(area(cell) > 0);
    }

    /** What is sampled for a cell. */
    Patch patch(int cell) {
        return patches.get(cell);
    }

    /**
     * The pieces of a cell, for drawing it: convex polygons that lie in the surface and do not overlap, counter-clockwise about the normal of
     * the facets.
     *
     * @return for each piece its corners in turn, mm
     */
    public List<List<Vector3D>> polygons(int cell) {
        return pieces.get(cell).stream()
                .map(piece -> IntStream.range(0, piece.corners())
                        .mapToObj(corner -> piece.corner(scene, corner))
                        .toList())
                .toList();
    }

    /**
     * The cell in which a point of a facet lies.
     *
     * @param facet a facet of the surface
     * @param x the point, mm
     * @param y likewise
     * @param z likewise
     */
    public int cellAt(int facet, double x, double y, double z) {
        if (whole) {
            return 0;
        }
        if (grid.isEmpty()) {
            return facet - surface.firstFacet();
        }
        CellGrid cells = grid.get();
        int column = step(cells.origin(), cells.alongU(), x, y, z, cells.columns());
        int row = step(cells.origin(), cells.alongV(), x, y, z, cells.rows());
        return column + cells.columns() * row;
    }

    private static int step(Vector3D origin, Vector3D along, double x, double y, double z, int count) {
        double share = ((x - origin.getX()) * along.getX()
                        + (y - origin.getY()) * along.getY()
                        + (z - origin.getZ()) * along.getZ())
                / along.normSq();
        return Math.min(count - 1, Math.max(0, (int) (share * count)));
    }

    /** Numbers of the cells that are not empty. */
    public int[] filled() {
        List<Integer> filled = new ArrayList<>();
        for (int cell = 0; cell < count(); cell++) {
            if (!isEmpty(cell)) {
                filled.add(cell);
            }
        }
        return filled.stream().mapToInt(cell -> cell).toArray();
    }
}
