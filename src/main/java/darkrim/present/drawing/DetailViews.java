package darkrim.present.drawing;

import darkrim.present.Figures;
import darkrim.present.drawing.Mark.Anchor;
import darkrim.shadow.OpeningMargin.Room;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.LimitingEdge;
import darkrim.study.section.SectionMargin;
import darkrim.study.section.SectionPlane;
import darkrim.study.section.SectionRay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Edges past which light comes, enlarged, with where the light lands and how far they can be moved. */
final class DetailViews {
    private static final double LINE = 3.1;
    /** An edge whose cosine with the normal of the section is this near 1 is square to the section. */
    private static final double SQUARE = 1e-9;
    /** A land that leans by less than this is one edge from end to end, mm. */
    private static final double UPRIGHT = 1e-9;
    /** Lines of words below each detail. */
    private static final int LINES = 10;

    private DetailViews() {}

    /** The edges that are shown enlarged: those that end light and have the least room, in the order in which they stand. */
    static List<LimitingEdge> chosen(LayoutSection section, int most) {
        return section.edges().stream()
                .sorted(Comparator.<LimitingEdge>comparingInt(edge -> endsLight(section, edge) ? 0 : 1)
                        .thenComparingDouble(edge -> least(section, edge)))
                .limit(most)
                .sorted(Comparator.comparingDouble(edge -> edge.narrowest().getX()))
                .toList();
    }

    private static boolean endsLight(LayoutSection section, LimitingEdge edge) {
        return section.rays().stream()
                .anyMatch(ray ->
                        ray.kind() == SectionRay.Kind.LIGHT_ENDS && ray.edge().equals(edge));
    }

    private static double least(LayoutSection section, LimitingEdge edge) {
        return margin(section, edge)
                .map(each -> Math.min(room(each.outward()), room(each.inward())))
                .orElse(1e9);
    }

    private static double room(Optional<Room> room) {
        return room.map(Room::millimetres).orElse(1e9);
    }

    static Optional<SectionMargin.OfEdge> margin(LayoutSection section, LimitingEdge edge) {
        return section.margins().stream()
                .filter(each -> each instanceof SectionMargin.OfEdge)
                .map(each -> (SectionMargin.OfEdge) each)
                .filter(each -> each.edge().equals(edge))
                .findFirst();
    }

    /** Letter of a detail. */
    static String letter(int number) {
        return String.valueOf((char) ('A' + number));
    }

    static void draw(
            Page page,
            LayoutSection section,
            List<LimitingEdge> edges,
            List<Box> rows,
            PaperView parts,
            Map<String, String> colours) {
        if (edges.isEmpty()) {
            Box room = rows.get(0);
            page.words(
                    "Past no edge of this section light comes that lands in it.", room.x(), room.y() + 6, room.width());
            return;
        }
        double gap = 3;
        int columns = (edges.size() + rows.size() - 1) / rows.size();
        for (int i = 0; i < edges.size(); i++) {
            Box room = rows.get(i / columns);
            double width = Math.min(120, (room.width() - gap * (columns - 1)) / columns);
            Box box = new Box(
                    room.x() + i % columns * (width + gap), room.y() + 5, width, room.height() - 6 - LINES * LINE);
            detail(page, section, edges.get(i), letter(i), box, parts, colours);
        }
    }

    private static void detail(
            Page page,
            LayoutSection section,
            LimitingEdge edge,
            String letter,
            Box box,
            PaperView parts,
            Map<String, String> colours) {
        List<SectionRay> rays =
                section.rays().stream().filter(ray -> ray.edge().equals(edge)).toList();
        PaperView view = PaperView.around(bounds(section.plane(), edge, rays), box, 1.5);
        page.words(
                letter + ", " + view.scale().words() + ": " + edge.words(),
                box.x(),
                box.y() - 1.2,
                2.6,
                Anchor.START,
                true,
                box.width());
        view.draw(page, section, rays, colours);
        page.frame(box, Line.THIN);
        mark(page, parts, edge, letter);
        view.scaleBar(page);
        rays.forEach(ray -> PartsView.letter(page, section, view, ray));
        rooms(page, section, view, edge);
        dimensions(page, section, view, edge, rays);
        double y = box.bottom() + LINE;
        for (String line : lines(section, edge, rays)) {
            page.words(line, box.x(), y, box.width());
            y += LINE;
        }
    }

    /** The edge and where its rays land. */
    private static double[] bounds(SectionPlane plane, LimitingEdge edge, List<SectionRay> rays) {
        List<Vector2D> points = new ArrayList<>(edge.profile());
        rays.forEach(ray -> points.add(plane.seen(ray.to())));
        double[] bounds = {1e99, 1e99, -1e99, -1e99};
        for (Vector2D point : points) {
            bounds[0] = Math.min(bounds[0], point.getX());
            bounds[1] = Math.min(bounds[1], point.getY());
            bounds[2] = Math.max(bounds[2], point.getX());
            bounds[3] = Math.max(bounds[3], point.getY());
        }
        return bounds;
    }

    /** The letter of a detail in the view of the parts. */
    private static void mark(Page page, PaperView parts, LimitingEdge edge, String letter) {
        Vector2D at = parts.paper(edge.narrowest());
        List<Vector2D> places = new ArrayList<>();
        for (double off = 3; off < 14; off += 1.5) {
            places.add(at.add(Vector2D.of(0, -off)));
            places.add(at.add(Vector2D.of(off, -off)));
            places.add(at.add(Vector2D.of(-off, -off)));
            places.add(at.add(Vector2D.of(0, off + 2)));
        }
        page.label(letter, 3, parts.box(), places);
    }

    /** How far the edge can be moved, as dimensions from its narrowest point. */
    private static void rooms(Page page, LayoutSection section, PaperView view, LimitingEdge edge) {
        Optional<SectionMargin.OfEdge> margin = margin(section, edge);
        // A room is measured square to the edge: where that is not in the section it has no length there.
        boolean square = Math.abs(edge.along().dot(section.plane().frame().normal())) > 1 - SQUARE;
        if (margin.isEmpty() || !square) {
            return;
        }
        Vector2D at = edge.narrowest();
        double inward = Math.signum(edge.open().getX() - at.getX());
        double top = view.paper(at).getY();
        margin.get()
                .outward()
                .ifPresent(room -> view.acrossDimension(
                        page,
                        at,
                        at.add(Vector2D.of(-inward * room.millimetres(), 0)),
                        top - 5,
                        "room outward " + shown(room)));
        margin.get()
                .inward()
                .ifPresent(room -> view.acrossDimension(
                        page,
                        at,
                        at.add(Vector2D.of(inward * room.millimetres(), 0)),
                        top - 11,
                        "room inward " + shown(room)));
    }

    /** Height of the edge above where light ends, and width of the penumbra. */
    private static void dimensions(
            Page page, LayoutSection section, PaperView view, LimitingEdge edge, List<SectionRay> rays) {
        Optional<Vector2D> ends = landing(section, rays, SectionRay.Kind.LIGHT_ENDS);
        Optional<Vector2D> whole = landing(section, rays, SectionRay.Kind.PUPIL_WHOLE);
        Vector2D at = edge.narrowest();
        ends.ifPresent(down -> {
            double side = Math.signum(at.getX() - edge.open().getX());
            double x = view.paper(at).getX() + side * 12;
            view.upDimension(page, at, down, x, Figures.length(Math.abs(at.getY() - down.getY())));
        });
        if (ends.isPresent()
                && whole.isPresent()
                && Math.abs(ends.get().getY() - whole.get().getY()) < 1e-9) {
            double y = view.paper(ends.get()).getY() + 5;
            view.acrossDimension(
                    page,
                    ends.get(),
                    whole.get(),
                    y,
                    "penumbra "
                            + Figures.length(
                                    Math.abs(ends.get().getX() - whole.get().getX())));
        }
    }

    private static Optional<Vector2D> landing(LayoutSection section, List<SectionRay> rays, SectionRay.Kind kind) {
        return rays.stream()
                .filter(ray -> ray.kind() == kind)
                .map(ray -> section.plane().seen(ray.to()))
                .findFirst();
    }

    private static List<String> lines(LayoutSection section, LimitingEdge edge, List<SectionRay> rays) {
        SectionPlane plane = section.plane();
        List<String> lines = new ArrayList<>();
        lines.add("edge at " + place(plane, edge));
        for (SectionRay ray : rays) {
            lines.add(PartsView.letter(ray) + " " + ray.kind().words() + ": " + place(plane, plane.seen(ray.to())));
            lines.add("    on " + ray.surface());
        }
        section.stopped().stream()
                .filter(each -> each.edge().equals(edge))
                .forEach(each -> lines.add(each.kind().words() + ": none, " + each.reason()));
        margin(section, edge).ifPresent(each -> {
            each.outward().ifPresent(room -> lines.add("outward " + shown(room) + then(room, "lit")));
            each.inward().ifPresent(room -> lines.add("inward " + shown(room) + then(room, "cut off")));
        });
        return lines.subList(0, Math.min(LINES, lines.size()));
    }

    private static String then(Room room, String what) {
        return room.surface().isEmpty() ? "" : ", then " + what + ": " + room.surface();
    }

    static String shown(Room room) {
        return (room.atLeast() ? ">= " : "") + Figures.margin(room.millimetres());
    }

    /** Where an edge is narrowest, from end to end: a ray from far across passes the end away from the pupil. */
    private static String place(SectionPlane plane, LimitingEdge edge) {
        Vector2D at = edge.narrowest();
        List<Double> ends = edge.profile().stream()
                .filter(each -> Math.abs(each.getX() - at.getX()) < UPRIGHT)
                .map(Vector2D::getY)
                .sorted()
                .toList();
        String low = Figures.length(ends.get(0));
        String high = Figures.length(ends.get(ends.size() - 1));
        return plane.across() + " = " + Figures.length(at.getX()) + ", " + plane.up() + " = "
                + (low.equals(high) ? high : low + " to " + high);
    }

    private static String place(SectionPlane plane, Vector2D at) {
        return plane.across() + " = " + Figures.length(at.getX()) + ", " + plane.up() + " = "
                + Figures.length(at.getY());
    }
}
