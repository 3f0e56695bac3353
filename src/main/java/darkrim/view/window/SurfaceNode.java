package darkrim.view.window;

import darkrim.present.picture.ColourScale;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.view.parts.CellTriangles;
import darkrim.view.parts.CoarseFacets;
import darkrim.view.parts.Pieces;
import darkrim.view.parts.SectionCut;
import java.util.Optional;
import javafx.scene.paint.Material;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;

/** What stands on the screen for one surface: its faces or the cells of its map, and its edges, cut where a section runs through. */
final class SurfaceNode {
    private final Scene scene;
    private final Surface surface;
    private final double[] edges;
    private final TriangleMesh wholeFaces;
    private final TriangleMesh wholeEdges;
    private final MeshView faces;
    private final MeshView lines;
    private Optional<SectionCut> section = Optional.empty();
    private Optional<CellTriangles> cells = Optional.empty();
    private Optional<SurfaceMap> map = Optional.empty();
    private SectionCut.Side side = SectionCut.Side.KEPT;
    private boolean shown = true;
    private final Optional<TriangleMesh> coarseFaces;
    private boolean coarse;

    /**
     * @param edges six coordinates each, mm
     * @param simple makes coarse forms of surfaces of very many facets
     */
    SurfaceNode(Scene scene, Surface surface, double[] edges, CoarseFacets simple) {
        this.scene = scene;
        this.surface = surface;
        this.edges = edges;
        wholeFaces = Meshes.whole(scene, surface);
        wholeEdges = Meshes.lines(edges);
        coarseFaces = simple.isCoarse(surface)
                ? Optional.of(Meshes.pieces(scene, surface, simple.of(surface)))
                : Optional.empty();
        faces = Meshes.faces(wholeFaces);
        lines = Meshes.lineView(wholeEdges);
    }

    MeshView faces() {
        return faces;
    }

    MeshView lines() {
        return lines;
    }

    /** The edges that are left, six coordinates each, mm; none where it is hidden. */
    double[] shownEdges() {
        if (!shown || side == SectionCut.Side.GONE) {
            return new double[0];
        }
        return side == SectionCut.Side.CUT ? section.orElseThrow().edges(edges) : edges;
    }

    /** Gives the whole surface one material. */
    void paint(Material material, Material lineMaterial) {
        if (map.isPresent()) {
            map = Optional.empty();
            cells = Optional.empty();
            shape();
        }
        faces.setMaterial(material);
        lines.setMaterial(lineMaterial);
    }

    /**
     * Gives each cell of a map its own colour.
     *
     * @param palette material with the colours of the scale in their order
     */
    void paint(SurfaceMap finer, ColourScale scale, LightKind kind, Material palette, Material lineMaterial) {
        if (map.isEmpty() || map.get().cells() != finer.cells()) {
            cells = Optional.of(new CellTriangles(finer.cells()));
        }
        map = Optional.of(finer);
        CellTriangles split = cells.orElseThrow();
        int colours = ColourScale.palette().length;
        if (side == SectionCut.Side.CUT) {
            Pieces pieces = section.orElseThrow().pieces(split.corners(), split::cell);
            faces.setMesh(Meshes.mesh(
                    pieces.corners(), surface.back(), colours, i -> scale.index(finer.value(kind, pieces.tag(i)))));
        } else {
            faces.setMesh(Meshes.mesh(
                    split.corners(), surface.back(), colours, i -> scale.index(finer.value(kind, split.cell(i)))));
        }
        faces.setMaterial(palette);
        lines.setMaterial(lineMaterial);
    }

    /** Shows it coarsely and without its edges, as while the camera moves, or whole. Cells of a map and cut faces stay. */
    void coarsen(boolean on) {
        coarse = on;
        if (map.isEmpty() && side != SectionCut.Side.CUT) {
            faces.setMesh(on ? coarseFaces.orElse(wholeFaces) : wholeFaces);
        }
        lines.setVisible(shown && side != SectionCut.Side.GONE && !on);
    }

    void show(boolean visible) {
        shown = visible;
        boolean here = shown && side != SectionCut.Side.GONE;
        faces.setVisible(here);
        lines.setVisible(here && !coarse);
    }

    /** Cuts it; cells must be painted anew then. */
    void cut(Optional<SectionCut> plane) {
        SectionCut.Side before = side;
        section = plane;
        side = plane.map(cut -> cut.side(surface)).orElse(SectionCut.Side.KEPT);
        if (side == SectionCut.Side.CUT || before == SectionCut.Side.CUT) {
            shape();
        }
        show(shown);
    }

    private void shape() {
        if (side == SectionCut.Side.CUT) {
            if (map.isEmpty()) {
                faces.setMesh(
                        Meshes.pieces(scene, surface, section.orElseThrow().pieces(surface)));
            }
            lines.setMesh(Meshes.lines(section.orElseThrow().edges(edges)));
        } else {
            if (map.isEmpty()) {
                faces.setMesh(coarse ? coarseFaces.orElse(wholeFaces) : wholeFaces);
            }
            lines.setMesh(wholeEdges);
        }
    }
}
