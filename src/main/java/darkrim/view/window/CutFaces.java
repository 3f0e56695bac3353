package darkrim.view.window;

import darkrim.scene.Surface;
import darkrim.view.parts.SectionCut;
import darkrim.view.parts.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;

/** The filled cut faces of solids, and their outlines. */
final class CutFaces {
    private final MeshView faces = Meshes.faces(new TriangleMesh());
    private final MeshView lines = Meshes.lineView(new TriangleMesh());

    /**
     * @param palette gives their colours
     */
    CutFaces(Palette palette) {
        faces.setMaterial(palette.cut());
        lines.setMaterial(palette.line(0xff20262b));
    }

    MeshView faces() {
        return faces;
    }

    MeshView lines() {
        return lines;
    }

    /** Fills what a section cuts of the solids that are shown, at least in part. */
    void fill(Stage stage, Optional<SectionCut> section, Predicate<Surface> shown) {
        List<double[]> triangles = new ArrayList<>();
        List<double[]> outlines = new ArrayList<>();
        if (section.isPresent()) {
            for (int[] solid : stage.solids()) {
                if (isShown(stage, solid, shown)) {
                    double[] outline = section.get().outline(solid);
                    triangles.add(section.get().fill(outline));
                    outlines.add(section.get().placed(outline));
                }
            }
        }
        faces.setVisible(section.isPresent());
        lines.setVisible(section.isPresent());
        if (section.isPresent()) {
            faces.setMesh(Meshes.mesh(joined(triangles), false, 1, i -> 0));
            lines.setMesh(Meshes.lines(joined(outlines)));
        }
    }

    private static boolean isShown(Stage stage, int[] solid, Predicate<Surface> shown) {
        for (int surface : solid) {
            if (shown.test(stage.scene().surfaces().get(surface))) {
                return true;
            }
        }
        return false;
    }

    static double[] joined(List<double[]> parts) {
        double[] all = new double[parts.stream().mapToInt(part -> part.length).sum()];
        int at = 0;
        for (double[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }
}
