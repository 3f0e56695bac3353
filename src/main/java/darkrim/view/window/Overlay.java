package darkrim.view.window;

import darkrim.present.picture.VerdictMark;
import darkrim.scene.Surface;
import darkrim.study.way.Way;
import darkrim.verdict.Verdict;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.parts.Hit;
import darkrim.view.parts.Stage;
import darkrim.view.work.Content;
import darkrim.view.work.Facts;
import darkrim.view.work.Judged;
import darkrim.view.work.SurfaceFacts;
import darkrim.view.work.ViewModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What is written over the parts: verdict letters, ruler, axes, points of reflection. */
final class Overlay {
    /** Letters and lines. */
    static final Color INK = Color.web("#20262b");

    private static final double LETTER = 16;

    private final ViewModel model;
    private final Eye eye;
    private List<Vector3D> points = List.of();

    Overlay(ViewModel model, Eye eye) {
        this.model = model;
        this.eye = eye;
    }

    /** Marks where light is reflected on these ways. */
    void mark(List<Way> found) {
        points = found.stream().map(Way::reflected).toList();
    }

    /** Draws everything, with signs of the differences where they are shown. */
    void draw(GraphicsContext g, Optional<Differences> differences) {
        g.clearRect(0, 0, eye.width(), eye.height());
        Look look = model.look();
        Content content = model.content();
        if (content.stage().isEmpty()) {
            return;
        }
        if (differences.isPresent()) {
            signs(g, content.stage().get(), differences.get());
        } else if (look.marksVerdicts()) {
            letters(g, content.stage().get(), content);
        }
        String note = note(look, content);
        if (!note.isEmpty()) {
            note(g, note);
        }
        points(g);
        ruler(g, look);
        axes(g, look);
    }

    /** A letter on each judged face whose middle is seen; failures first, none over another. */
    private void letters(GraphicsContext g, Stage stage, Content content) {
        List<double[]> taken = new ArrayList<>();
        boolean outdated = content.facts().filter(Facts::isOutdated).isPresent();
        for (Verdict verdict : new Verdict[] {Verdict.FAIL, Verdict.UNDECIDED, Verdict.PASS}) {
            VerdictMark mark = VerdictMark.of(verdict);
            for (Surface surface : stage.scene().surfaces()) {
                Optional<Verdict> found = content.facts()
                        .map(facts -> facts.surfaces().get(surface.name()))
                        .flatMap(SurfaceFacts::verdict);
                if (found.filter(verdict::equals).isPresent()) {
                    letter(
                            g,
                            stage,
                            surface,
                            String.valueOf(mark.letter()),
                            outdated ? SceneView.OUTDATED : mark.argb(),
                            taken);
                }
            }
        }
    }

    /** What became of the light of each face, in signs. */
    private void signs(GraphicsContext g, Stage stage, Differences differences) {
        List<double[]> taken = new ArrayList<>();
        int ink = Palette.argb(INK);
        for (Surface surface : stage.scene().surfaces()) {
            differences.sign(surface).ifPresent(sign -> letter(g, stage, surface, sign, ink, taken));
        }
    }

    private void letter(GraphicsContext g, Stage stage, Surface surface, String sign, int argb, List<double[]> taken) {
        Vector3D middle = middle(stage, surface);
        Vector3D seen = eye.project(middle);
        double x = seen.getX();
        double y = seen.getY();
        boolean inside = seen.getZ() > 0 && x > 0 && y > 0 && x < eye.width() && y < eye.height();
        boolean free = taken.stream()
                .noneMatch(other -> Math.abs(other[0] - x) < LETTER + 3 && Math.abs(other[1] - y) < LETTER + 3);
        if (!inside || !free || !isSeen(surface, x, y)) {
            return;
        }
        taken.add(new double[] {x, y});
        g.setFill(Palette.colour(argb));
        g.fillRoundRect(x - LETTER / 2, y - LETTER / 2, LETTER, LETTER, 5, 5);
        g.setStroke(Palette.colour(VerdictMark.LETTER));
        g.setLineWidth(1);
        g.strokeRoundRect(x - LETTER / 2, y - LETTER / 2, LETTER, LETTER, 5, 5);
        g.setFill(Palette.colour(VerdictMark.LETTER));
        g.setFont(Font.font("System", FontWeight.BOLD, 11));
        g.setTextAlign(TextAlignment.CENTER);
        g.setTextBaseline(VPos.CENTER);
        g.fillText(sign, x, y);
    }

    private boolean isSeen(Surface surface, double x, double y) {
        Optional<Hit> hit = eye.at(x, y);
        return hit.isPresent()
                && hit.get().surface().isPresent()
                && hit.get().surface().get() == surface.index();
    }

    /** The middle of the largest facet. */
    private static Vector3D middle(Stage stage, Surface surface) {
        int largest = surface.firstFacet();
        for (int f = largest; f < surface.firstFacet() + surface.facetCount(); f++) {
            if (stage.scene().facetArea(f) > stage.scene().facetArea(largest)) {
                largest = f;
            }
        }
        return stage.scene()
                .corner(largest, 0)
                .add(stage.scene().corner(largest, 1))
                .add(stage.scene().corner(largest, 2))
                .multiply(1.0 / 3);
    }

    private void points(GraphicsContext g) {
        g.setStroke(Palette.colour(PathLines.COLOUR));
        g.setLineWidth(1);
        g.setLineDashes(3, 4);
        for (Way way : model.content().ways()) {
            // Dashed where parts stand before it; the whole lines are drawn among the parts.
            Vector3D middle = eye.project(way.reflected());
            Vector3D end = eye.project(way.arrives());
            if (middle.getZ() > 0 && end.getZ() > 0) {
                g.strokeLine(middle.getX(), middle.getY(), end.getX(), end.getY());
            }
        }
        for (Judged.Line ray : PathLines.straight(model.look(), model.content())) {
            Vector3D end = eye.project(ray.to());
            if (end.getZ() > 0) {
                g.strokeOval(end.getX() - 5, end.getY() - 5, 10, 10);
            }
        }
        g.setLineDashes();
        for (Vector3D point : points) {
            Vector3D seen = eye.project(point);
            if (seen.getZ() > 0) {
                g.setFill(Color.WHITE);
                g.fillOval(seen.getX() - 5, seen.getY() - 5, 10, 10);
                g.setFill(Palette.colour(PathLines.COLOUR));
                g.fillOval(seen.getX() - 3.5, seen.getY() - 3.5, 7, 7);
            }
        }
    }

    private void ruler(GraphicsContext g, Look look) {
        List<Vector3D> ends = look.ruler().points().stream().map(eye::project).toList();
        if (ends.stream().anyMatch(end -> end.getZ() <= 0)) {
            // Of a point beside or behind the eye there is no place in the picture.
            return;
        }
        g.setLineWidth(2);
        for (Vector3D seen : ends) {
            g.setStroke(Color.WHITE);
            g.strokeOval(seen.getX() - 6, seen.getY() - 6, 12, 12);
            g.setStroke(INK);
            g.strokeOval(seen.getX() - 4.5, seen.getY() - 4.5, 9, 9);
        }
        if (!look.ruler().isWhole()) {
            return;
        }
        Vector3D from = ends.get(0);
        Vector3D to = ends.get(1);
        g.setStroke(Color.WHITE);
        g.setLineWidth(4);
        g.strokeLine(from.getX(), from.getY(), to.getX(), to.getY());
        g.setStroke(INK);
        g.setLineWidth(2);
        g.strokeLine(from.getX(), from.getY(), to.getX(), to.getY());
        String words = look.ruler().words();
        double width = 8.0 * words.length() * 0.86;
        double right = eye.width() - 4;
        double x = Math.max(width / 2 + 4, Math.min(right - width / 2, (from.getX() + to.getX()) / 2));
        double y = Math.max(16, Math.min(eye.height() - 16, (from.getY() + to.getY()) / 2 - 18));
        plate(g, words, x, y, width);
    }

    /** What must be known of what is shown, if anything. */
    private static String note(Look look, Content content) {
        String outdated =
                content.facts().filter(Facts::isOutdated).map(Facts::outdated).orElse("");
        if (!outdated.isEmpty() && look.marksVerdicts()) {
            return "Grey outlines: " + outdated;
        }
        return look.source().isEmpty() || look.light() == Light.NONE
                ? ""
                : outdated.isEmpty() ? content.wanting(look.source()) : outdated;
    }

    /** A line at the lower border, beside the axes. */
    private void note(GraphicsContext g, String words) {
        double width = Math.min(eye.width() - 110, 7.0 * words.length() + 16);
        plate(g, words, 98 + width / 2, eye.height() - 20, width);
    }

    private static void plate(GraphicsContext g, String words, double x, double y, double width) {
        g.setFill(INK);
        g.fillRoundRect(x - width / 2, y - 11, width, 22, 6, 6);
        g.setFill(Color.WHITE);
        g.setFont(Font.font("System", 12));
        g.setTextAlign(TextAlignment.CENTER);
        g.setTextBaseline(VPos.CENTER);
        g.fillText(words, x, y, width - 8);
    }

    /** The directions of x, y and z, in the lower left corner. */
    private void axes(GraphicsContext g, Look look) {
        double x = 44;
        double y = eye.height() - 44;
        Vector3D[] axes = {Vector3D.Unit.PLUS_X, Vector3D.Unit.PLUS_Y, Vector3D.Unit.PLUS_Z};
        g.setFont(Font.font("System", FontWeight.BOLD, 12));
        g.setTextAlign(TextAlignment.CENTER);
        g.setTextBaseline(VPos.CENTER);
        for (int i = 0; i < axes.length; i++) {
            double right = axes[i].dot(look.camera().right());
            double up = axes[i].dot(look.camera().up());
            g.setStroke(INK);
            g.setLineWidth(2);
            g.strokeLine(x, y, x + 26 * right, y - 26 * up);
            if (Math.hypot(right, up) > 0.2) {
                g.setFill(INK);
                g.fillText("xyz".substring(i, i + 1), x + 35 * right, y - 35 * up);
            }
        }
    }
}
