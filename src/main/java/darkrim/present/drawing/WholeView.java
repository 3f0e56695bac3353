package darkrim.present.drawing;

import darkrim.present.drawing.Mark.Anchor;
import darkrim.study.section.LayoutSection;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** The whole of a section, from the pupil to where its light lands. */
final class WholeView {
    private WholeView() {}

    /** The view that holds all of it. */
    static PaperView of(LayoutSection section, Box box) {
        LayoutSection.Rim rim = section.pupil().orElseThrow();
        Vector2D left = section.plane().seen(rim.left());
        Vector2D right = section.plane().seen(rim.right());
        double[] bounds = section.bounds().orElse(new double[] {0, 0, 0, 0}).clone();
        for (Vector2D end : List.of(left, right)) {
            bounds[0] = Math.min(bounds[0], end.getX());
            bounds[1] = Math.min(bounds[1], end.getY());
            bounds[2] = Math.max(bounds[2], end.getX());
            bounds[3] = Math.max(bounds[3], end.getY());
        }
        return PaperView.around(bounds, box.inside(6), 1);
    }

    static void draw(Page page, LayoutSection section, PaperView view, Box box, Map<String, String> colours) {
        LayoutSection.Rim rim = section.pupil().orElseThrow();
        Vector2D left = section.plane().seen(rim.left());
        Vector2D right = section.plane().seen(rim.right());
        page.words("Whole, " + view.scale().words(), box.x(), box.y() - 2, 3, Anchor.START, true, box.width());
        view.draw(page, section, section.rays(), colours);
        page.add(new Mark.Path(List.of(view.paper(left), view.paper(right)), Line.THICK));
        page.label(
                "L",
                2.4,
                box,
                List.of(
                        view.paper(left).add(Vector2D.of(-2, -0.5)),
                        view.paper(left).add(Vector2D.of(-2, 2.5))));
        page.label(
                "R",
                2.4,
                box,
                List.of(
                        view.paper(right).add(Vector2D.of(2, -0.5)),
                        view.paper(right).add(Vector2D.of(2, 2.5))));
        Vector2D middle = view.paper(section.plane().seen(section.middle()));
        page.label("pupil", 2.4, box, List.of(middle.add(Vector2D.of(0, -1.5)), middle.add(Vector2D.of(0, 3.5))));
        PartsView.axes(page, section, box);
        view.scaleBar(page);
    }
}
