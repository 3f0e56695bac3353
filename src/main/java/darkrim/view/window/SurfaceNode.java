package darkrim.view.window;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.view.parts.SectionCut;
import java.util.Optional;
import javafx.scene.paint.Material;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;

/** What stands on the screen for one surface: its faces and its edges, cut where a section runs through. */
final class SurfaceNode {
    private final Scene scene;
    private final Surface surface;
    private final double[] edges;
    private final TriangleMesh wholeFaces;
    private final TriangleMesh wholeEdges;
    private final MeshView faces;
    private final MeshView lines;
    private boolean cut;
    private boolean gone;
    private boolean shown = true;

    /**
     * @param edges six coordinates each, mm
     */
    SurfaceNode(Scene scene, Surface surface, double[] edges) {
        this.scene = scene;
        this.surface = surface;
        this.edges = edges;
        wholeFaces = Meshes.whole(scene, surface);
        wholeEdges = Meshes.lines(edges);
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
    double[] shownEdges(Optional<SectionCut> section) {
        if (!shown || gone) {
            return new double[0];
        }
        return cut && section.isPresent() ? section.get().edges(edges) : edges;
    }

    void paint(Material material, Material lineMaterial) {
        faces.setMaterial(material);
        lines.setMaterial(lineMaterial);
    }

    void show(boolean visible) {
        shown = visible;
        faces.setVisible(shown && !gone);
        lines.setVisible(shown && !gone);
    }

    void cut(Optional<SectionCut> section) {
        SectionCut.Side side = section.map(plane -> plane.side(surface)).orElse(SectionCut.Side.KEPT);
        gone = side == SectionCut.Side.GONE;
        if (side == SectionCut.Side.CUT) {
            faces.setMesh(Meshes.pieces(scene, surface, section.orElseThrow().pieces(surface)));
            lines.setMesh(Meshes.lines(section.orElseThrow().edges(edges)));
            cut = true;
        } else if (cut) {
            faces.setMesh(wholeFaces);
            lines.setMesh(wholeEdges);
            cut = false;
        }
        show(shown);
    }
}
