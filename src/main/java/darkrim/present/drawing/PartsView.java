package darkrim.present.drawing;

import darkrim.present.Figures;
import darkrim.present.drawing.Mark.Anchor;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.LimitingEdge;
import darkrim.study.section.SectionRay;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** The parts, as large as they fit; rays are broken off at the border, where letters tell from where on the pupil they come. */
final class PartsView {
    private PartsView() {}

    static void draw(Page page, LayoutSection section, PaperView view, Map<String, String> colours) {
        Box box = view.box();
        String broken = section.rays().isEmpty()
                ? ""
                : "; rays are broken off: L, M, R come from the left rim, the middle and the right rim of the pupil";
        page.words("Parts, " + view.scale().words() + broken, box.x(), box.y() - 2, 3, Anchor.START, true, box.width());
        page.frame(box, Line.THIN);
        view.draw(page, section, section.rays(), colours);
        view.scaleBar(page);
        axes(page, section, box);
        for (SectionRay ray : section.rays()) {
            letter(page, section, view, ray);
        }
        widths(page, section, view);
    }

    /** Which way is up and which to the right. */
    static void axes(Page page, LayoutSection section, Box box) {
        Vector2D corner = Vector2D.of(box.x() + 4, box.bottom() - 4);
        page.line(Line.PART, corner.getX(), corner.getY(), corner.getX() + 7, corner.getY());
        page.line(Line.PART, corner.getX(), corner.getY(), corner.getX(), corner.getY() - 7);
        page.label(section.plane().across(), 2.4, box, List.of(corner.add(Vector2D.of(8.4, 0.8))));
        page.label(section.plane().up(), 2.4, box, List.of(corner.add(Vector2D.of(0, -8))));
    }

    /** From where on the pupil a ray comes. */
    static String letter(SectionRay ray) {
        if (ray.kind() == SectionRay.Kind.CHIEF) {
            return "M";
        }
        boolean openToRight = ray.edge().open().getX() > ray.edge().narrowest().getX();
        return openToRight == (ray.kind() == SectionRay.Kind.LIGHT_ENDS) ? "R" : "L";
    }

    /** A letter where a ray leaves a view, or as near to that as there is room. */
    static void letter(Page page, LayoutSection section, PaperView view, SectionRay ray) {
        List<Vector2D> course = ray.course().stream()
                .map(section.plane()::seen)
                .map(view::paper)
                .toList();
        if (view.box().holds(course.get(0))) {
            return;
        }
        List<Vector2D> places = new ArrayList<>();
        // From the far end of the ray inward; the label itself looks for the first place inside the box.
        double most = view.box().width() + view.box().height();
        for (int leg = 1; leg < course.size(); leg++) {
            boolean last = leg == course.size() - 1;
            Vector2D to = course.get(leg);
            double length = to.distance(course.get(leg - 1));
            for (double along = Math.min(length, most); along > (last ? 4 : 0); along -= 1.5) {
                places.add(to.lerp(course.get(leg - 1), along / length).add(Vector2D.of(0, 0.8)));
            }
        }
        page.label(letter(ray), 2.2, view.box(), places);
    }

    /** The width of every opening, at its narrowest. */
    private static void widths(Page page, LayoutSection section, PaperView view) {
        Map<String, List<LimitingEdge>> openings = new LinkedHashMap<>();
        section.edges().stream()
                .filter(edge -> edge.profile().size() > 1)
                .forEach(edge -> openings.computeIfAbsent(edge.name(), name -> new ArrayList<>())
                        .add(edge));
        for (List<LimitingEdge> both : openings.values()) {
            if (both.size() == 2) {
                Vector2D a = both.get(0).narrowest();
                Vector2D b = both.get(1).narrowest();
                double y = Math.min(view.paper(a).getY(), view.paper(b).getY()) - 7;
                view.acrossDimension(page, a, b, y, Figures.length(Math.abs(a.getX() - b.getX())));
            }
        }
    }
}
