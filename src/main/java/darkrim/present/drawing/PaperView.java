package darkrim.present.drawing;

import darkrim.present.Figures;
import darkrim.present.drawing.Mark.Anchor;
import darkrim.study.section.CutBody;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.SectionRay;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * A view of a section on paper.
 *
 * @param box where it stands on the sheet
 * @param middle what lies in the middle of the box, mm of the section
 * @param scale its scale
 */
record PaperView(Box box, Vector2D middle, DrawnScale scale) {
    /** Colour of a window. */
    static final String WINDOW = "#e3f1f8";

    /** A view of all within bounds: left, lowest, right, highest, mm. */
    static PaperView around(double[] bounds, Box box, double air) {
        double width = Math.max(1e-6, bounds[2] - bounds[0]) * air;
        double height = Math.max(1e-6, bounds[3] - bounds[1]) * air;
        return new PaperView(
                box,
                Vector2D.of((bounds[0] + bounds[2]) / 2, (bounds[1] + bounds[3]) / 2),
                DrawnScale.fitting(width, height, box));
    }

    /** A place of the section on paper. */
    Vector2D paper(Vector2D point) {
        return Vector2D.of(
                box.x() + box.width() / 2 + (point.getX() - middle.getX()) * scale.paper(),
                box.y() + box.height() / 2 - (point.getY() - middle.getY()) * scale.paper());
    }

    private List<Vector2D> paper(List<Vector2D> points) {
        return points.stream().map(this::paper).toList();
    }

    /** Draws what is cut, coloured by part, and some rays; cut off at the box. */
    void draw(Page page, LayoutSection section, List<SectionRay> rays, Map<String, String> colours) {
        List<Mark> marks = new ArrayList<>();
        section.plate().ifPresent(heights -> marks.add(plate(heights)));
        for (CutBody body : section.bodies()) {
            if (!body.outlines().isEmpty()) {
                marks.add(new Mark.Area(
                        body.outlines().stream().map(this::paper).toList(), colours.get(body.part()), Line.PART));
            }
            body.lines().forEach(line -> marks.add(new Mark.Path(paper(line), Line.THICK)));
        }
        rays.forEach(ray -> marks.add(new Mark.Path(
                ray.course().stream()
                        .map(section.plane()::seen)
                        .map(this::paper)
                        .toList(),
                RayLines.of(ray.kind()))));
        page.add(new Mark.Clipped(box, marks));
    }

    /** The window, which goes on to both sides. */
    private Mark plate(double[] heights) {
        double left = box.x() - 1;
        double right = box.right() + 1;
        double low = paper(Vector2D.of(0, heights[0])).getY();
        double high = paper(Vector2D.of(0, heights[1])).getY();
        return new Mark.Area(
                List.of(List.of(
                        Vector2D.of(left, high),
                        Vector2D.of(right, high),
                        Vector2D.of(right, low),
                        Vector2D.of(left, low))),
                WINDOW,
                Line.THIN);
    }

    /** A bar of a round length at the lower right of the box. */
    void scaleBar(Page page) {
        double length = scale.round(box.width() / 4);
        double wide = length * scale.paper();
        double y = box.bottom() - 2;
        double x = box.right() - 3 - wide;
        page.line(Line.THICK, x, y, x + wide, y);
        page.line(Line.THIN, x, y - 1, x, y + 1);
        page.line(Line.THIN, x + wide, y - 1, x + wide, y + 1);
        page.words(Figures.limit(length) + " mm", x + wide, y - 1.6, 2.2, Anchor.END, false, box.width() / 3);
    }

    /** A level dimension between two places of the section, at a height on paper, with its words above it where there is room. */
    void acrossDimension(Page page, Vector2D from, Vector2D to, double y, String words) {
        Vector2D a = paper(from);
        Vector2D b = paper(to);
        List<Mark> lines = new ArrayList<>();
        lines.add(path(Vector2D.of(a.getX(), y), Vector2D.of(b.getX(), y)));
        lines.add(path(Vector2D.of(a.getX(), a.getY()), Vector2D.of(a.getX(), y < a.getY() ? y - 1 : y + 1)));
        lines.add(path(Vector2D.of(b.getX(), b.getY()), Vector2D.of(b.getX(), y < b.getY() ? y - 1 : y + 1)));
        lines.addAll(arrow(Vector2D.of(a.getX(), y), Math.signum(b.getX() - a.getX()), 0));
        lines.addAll(arrow(Vector2D.of(b.getX(), y), Math.signum(a.getX() - b.getX()), 0));
        page.add(new Mark.Clipped(box, lines));
        double middleX = (a.getX() + b.getX()) / 2;
        double half = Lettering.width(words, 2.2, false) / 2;
        double beside = Math.max(a.getX(), b.getX()) + half + 1;
        double before = Math.min(a.getX(), b.getX()) - half - 1;
        page.clearLabel(
                words,
                2.2,
                box,
                List.of(
                        Vector2D.of(middleX, y - 0.8),
                        Vector2D.of(beside, y + 0.8),
                        Vector2D.of(before, y + 0.8),
                        Vector2D.of(middleX, y + 2.6)));
    }

    /** An upright dimension between two heights of the section, at a place across on paper. */
    void upDimension(Page page, Vector2D from, Vector2D to, double x, String words) {
        Vector2D a = paper(from);
        Vector2D b = paper(to);
        List<Mark> lines = new ArrayList<>();
        lines.add(path(Vector2D.of(x, a.getY()), Vector2D.of(x, b.getY())));
        lines.add(path(a, Vector2D.of(x < a.getX() ? x - 1 : x + 1, a.getY())));
        lines.add(path(b, Vector2D.of(x < b.getX() ? x - 1 : x + 1, b.getY())));
        lines.addAll(arrow(Vector2D.of(x, a.getY()), 0, Math.signum(b.getY() - a.getY())));
        lines.addAll(arrow(Vector2D.of(x, b.getY()), 0, Math.signum(a.getY() - b.getY())));
        page.add(new Mark.Clipped(box, lines));
        double half = Lettering.width(words, 2.2, false) / 2;
        double middleY = (a.getY() + b.getY()) / 2 + 0.8;
        page.clearLabel(
                words,
                2.2,
                box,
                List.of(
                        Vector2D.of(x - half - 0.8, middleY),
                        Vector2D.of(x + half + 0.8, middleY),
                        Vector2D.of(x - half - 0.8, Math.min(a.getY(), b.getY()) - 1)));
    }

    private static Mark path(Vector2D from, Vector2D to) {
        return new Mark.Path(List.of(from, to), Line.THIN);
    }

    /** The two strokes of an arrow whose tip lies at a place and which points away from the way inward. */
    private static List<Mark> arrow(Vector2D tip, double inwardX, double inwardY) {
        double length = 1.4;
        double half = 0.35;
        return List.of(
                path(tip, tip.add(Vector2D.of(length * inwardX + half * inwardY, length * inwardY + half * inwardX))),
                path(tip, tip.add(Vector2D.of(length * inwardX - half * inwardY, length * inwardY - half * inwardX))));
    }
}
