package darkrim.view.window;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Group;
import javafx.scene.paint.Material;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.transform.Affine;

/** Lines of more than a pixel: copies of one mesh, each a little beside the first. */
final class BoldLines {
    private final Group group = new Group();

    /**
     * @param places where the copies stand
     * @param material their colour
     */
    BoldLines(Affine[] places, Material material) {
        for (Affine place : places) {
            MeshView view = Meshes.lineView(new TriangleMesh());
            view.setMaterial(material);
            view.getTransforms().add(place);
            group.getChildren().add(view);
        }
    }

    Group group() {
        return group;
    }

    /** Gives them another colour. */
    void paint(Material material) {
        group.getChildren().forEach(view -> ((MeshView) view).setMaterial(material));
    }

    /** Shows these lines, six coordinates each, mm. */
    void show(double[] ends) {
        TriangleMesh mesh = Meshes.lines(ends);
        group.setVisible(ends.length > 0);
        group.getChildren().forEach(view -> ((MeshView) view).setMesh(mesh));
    }

    /**
     * Lines in strokes.
     *
     * @param ends six coordinates a line, mm
     * @param stroke length of a stroke, mm
     * @param gap length of a gap, mm
     */
    static double[] dashed(double[] ends, double stroke, double gap) {
        List<double[]> strokes = new ArrayList<>();
        for (int at = 0; at < ends.length; at += 6) {
            double length = 0;
            for (int axis = 0; axis < 3; axis++) {
                double along = ends[at + 3 + axis] - ends[at + axis];
                length += along * along;
            }
            length = Math.sqrt(length);
            int count = (int) Math.max(1, Math.min(400, Math.round(length / (stroke + gap))));
            double share = count == 1 && length < stroke ? 1 : stroke / (stroke + gap);
            for (int i = 0; i < count; i++) {
                double[] piece = new double[6];
                for (int axis = 0; axis < 3; axis++) {
                    double from = ends[at + axis];
                    double along = ends[at + 3 + axis] - from;
                    // Half a gap at either end, so that the pattern is the same both ways.
                    piece[axis] = from + along * (i + (1 - share) / 2) / count;
                    piece[3 + axis] = from + along * (i + (1 + share) / 2) / count;
                }
                strokes.add(piece);
            }
        }
        return CutFaces.joined(strokes);
    }
}
