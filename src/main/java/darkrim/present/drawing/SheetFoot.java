package darkrim.present.drawing;

import darkrim.layout.Layout;
import darkrim.layout.form.Wording;
import darkrim.present.Figures;
import darkrim.present.LayoutWords;
import darkrim.present.drawing.Mark.Anchor;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.LimitingEdge;
import darkrim.study.section.SectionMargin;
import darkrim.study.section.SectionRay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** The foot of a sheet: what the lines and colours mean, margins, and the title block. */
final class SheetFoot {
    private static final double LINE = 3.6;

    private SheetFoot() {}

    /**
     * What it tells beside the section.
     *
     * @param imprint where the sheet comes from
     * @param scale scale of the parts
     * @param colours colours of the parts
     * @param details the edges that are shown enlarged
     */
    record Told(
            SectionSheet.Imprint imprint, DrawnScale scale, Map<String, String> colours, List<LimitingEdge> details) {}

    static void draw(Page page, LayoutSection section, Box foot, Told told) {
        Box key = new Box(foot.x(), foot.y(), 95, foot.height());
        Box margins = new Box(key.right(), foot.y(), 140, foot.height());
        Box title = new Box(margins.right(), foot.y(), foot.right() - margins.right(), foot.height());
        for (Box box : List.of(key, margins, title)) {
            page.frame(box, Line.THIN);
        }
        key(page, section, key, told);
        margins(page, section, margins, told);
        title(page, section, title, told);
    }

    private static void key(Page page, LayoutSection section, Box box, Told told) {
        double y = box.y() + 4.5;
        if (!section.rays().isEmpty()) {
            for (SectionRay.Kind kind : SectionRay.Kind.values()) {
                page.line(RayLines.of(kind), box.x() + 2, y - 0.8, box.x() + 18, y - 0.8);
                page.words(meaning(kind), box.x() + 20, y, box.width() - 22);
                y += LINE;
            }
        }
        double x = box.x() + 2;
        double top = y;
        int row = 0;
        int rows = (int) Math.max(1, Math.floor((box.bottom() - top) / LINE));
        List<Map.Entry<String, String>> parts = new ArrayList<>();
        if (section.plate().isPresent()) {
            section.window()
                    .ifPresent(each -> parts.add(Map.entry(
                            each.name() + " (window, n = " + Wording.number(each.index()) + ")", PaperView.WINDOW)));
        }
        parts.addAll(told.colours().entrySet());
        int shown = parts.size() <= 2 * rows ? parts.size() : 2 * rows - 1;
        for (Map.Entry<String, String> part : parts.subList(0, shown)) {
            swatch(page, x, top + (row % rows) * LINE, part.getValue());
            page.words(part.getKey(), x + 6, top + (row % rows) * LINE, box.width() / 2 - 10);
            row++;
            if (row == rows) {
                x += box.width() / 2;
            }
        }
        if (shown < parts.size()) {
            page.words(
                    "and " + Figures.counted(parts.size() - shown, "more part"),
                    x,
                    top + (row % rows) * LINE,
                    box.width() / 2 - 4);
        }
    }

    private static String meaning(SectionRay.Kind kind) {
        return switch (kind) {
            case LIGHT_ENDS -> "light ends: from the far rim of the pupil, past an edge";
            case CHIEF -> "chief ray: from the middle of the pupil, past an edge";
            case PUPIL_WHOLE -> "from here inward the edge hides nothing of the pupil";
        };
    }

    private static void swatch(Page page, double x, double y, String colour) {
        page.add(new Mark.Area(
                List.of(List.of(
                        Vector2D.of(x, y - 2.2),
                        Vector2D.of(x + 4.5, y - 2.2),
                        Vector2D.of(x + 4.5, y + 0.2),
                        Vector2D.of(x, y + 0.2))),
                colour,
                Line.PART));
    }

    private static void margins(Page page, LayoutSection section, Box box, Told told) {
        List<String> lines = new ArrayList<>();
        section.margins().stream()
                .filter(each -> each instanceof SectionMargin.OfSurface)
                .map(each -> (SectionMargin.OfSurface) each)
                .sorted(Comparator.comparingDouble(SectionMargin.OfSurface::millimetres))
                .map(each ->
                        (each.isUnexplained() ? ">= " : "") + Figures.margin(each.millimetres()) + "  " + each.words())
                .forEach(lines::add);
        double y = box.y() + 4.5;
        page.words(
                "Margins of direct light on surfaces that are cut, mm (negative: lit)",
                box.x() + 2,
                y,
                2.4,
                Anchor.START,
                true,
                box.width() - 4);
        int rows = section.window().isEmpty() ? 6 : 5;
        if (lines.isEmpty()) {
            lines.add("The check found none here: the least margin of each requirement lies elsewhere.");
        } else if (lines.size() > rows) {
            int left = lines.size() - rows + 1;
            lines.subList(rows - 1, lines.size()).clear();
            lines.add("and " + left + " more; 'darkrim check' has them all");
        }
        for (String line : lines) {
            y += LINE;
            page.words(line, box.x() + 2, y, box.width() - 4);
        }
        y = box.bottom() - 2 - LINE;
        if (section.window().isPresent()) {
            page.words(
                    "Margins and rooms are for a pupil as wide as the window can make it seem: true ones are no smaller.",
                    box.x() + 2,
                    y - 2 * LINE,
                    box.width() - 4);
        }
        int edges = section.edges().size();
        if (edges > told.details().size()) {
            page.words(
                    told.details().size() + " of " + edges
                            + " edges are shown enlarged: those that end light, with the least room.",
                    box.x() + 2,
                    y - LINE,
                    box.width() - 4);
        }
        if (section.pupil().isPresent()) {
            page.words(
                    "L, M, R: from the left rim, the middle, the right rim of the pupil, as it is seen here.",
                    box.x() + 2,
                    box.bottom() - 2 - LINE,
                    box.width() - 4);
        }
        page.words(projection(section), box.x() + 2, box.bottom() - 2, box.width() - 4);
    }

    private static String projection(LayoutSection section) {
        return section.pupil().isEmpty()
                ? "The plane lies across the light: no ray is drawn in it."
                : "Lines: where the border of shadow, or of full light, cuts the plane; the rays to the landings were traced.";
    }

    private static void title(Page page, LayoutSection section, Box box, Told told) {
        Layout layout = section.layout();
        double x = box.x() + 2;
        double wide = box.width() - 4;
        page.words(layout.title(), x, box.y() + 6, 4, Anchor.START, true, wide);
        String revision = layout.revision().isEmpty() ? "no revision" : "Revision " + layout.revision();
        page.words(revision + LayoutWords.shape(layout), x, box.y() + 11.5, 3, Anchor.START, true, wide);
        page.words("Section " + section.plane().words(), x, box.y() + 17, 3, Anchor.START, false, wide);
        page.words(
                "Parts at " + told.scale().words() + " on A3; all lengths in mm",
                x,
                box.y() + 22,
                3,
                Anchor.START,
                false,
                wide);
        double y = box.y() + 27;
        List<String> small = new ArrayList<>();
        small.add(LayoutWords.file(layout));
        small.add("Darkrim " + told.imprint().version() + ", seed "
                + told.imprint().seed()
                + told.imprint().date().map(date -> ", " + date).orElse(""));
        small.add("True to scale only when printed without fitting to the page: measure the bar.");
        for (String line : small) {
            page.words(line, x, y, wide);
            y += LINE;
        }
    }
}
