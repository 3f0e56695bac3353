package darkrim.present.drawing;

import darkrim.layout.Part;
import darkrim.study.section.CutBody;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.LimitingEdge;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A section on a sheet of A3, 420 mm by 297 mm: the whole with the pupil to the left, the parts enlarged to the right with the rays broken off, the
 * edges past which light comes in details below, and what the check found of their margins. Marks only: {@link SvgSheet} and {@link PdfSheet} write
 * them.
 *
 * @param marks what is on the sheet, in the order in which it is drawn
 */
public record SectionSheet(List<Mark> marks) {
    /** Width of the sheet, mm. */
    public static final double WIDTH = 420;
    /** Height of the sheet, mm. */
    public static final double HEIGHT = 297;

    private static final Box FRAME = new Box(10, 10, 400, 277);
    private static final Box WHOLE = new Box(12, 18, 84, 226);
    private static final Box PARTS = new Box(100, 18, 308, 104);
    private static final Box ONLY = new Box(12, 18, 396, 226);
    private static final Box DETAILS = new Box(100, 126, 308, 118);
    private static final Box UPPER = new Box(100, 12, 308, 114);
    private static final int COLUMNS = 4;
    private static final Box FOOT = new Box(10, 247, 400, 40);
    private static final List<String> COLOURS =
            List.of("#a9bccd", "#d6cba0", "#c3b0cf", "#b4cfa8", "#dab3a8", "#a8cdcd", "#cfcfcf", "#e0c4d6");

    /** Copies the list. */
    public SectionSheet {
        marks = List.copyOf(marks);
    }

    /**
     * What a sheet says of itself.
     *
     * @param version version of the program
     * @param seed seed of the check
     * @param date a date to be written, if any
     */
    public record Imprint(String version, long seed, Optional<String> date) {}

    /** Draws a section. */
    public static SectionSheet of(LayoutSection section, Imprint imprint) {
        Page page = new Page();
        page.frame(FRAME, Line.THICK);
        Map<String, String> colours = colours(section);
        double[] bounds = section.bounds().orElse(new double[] {-1, -1, 1, 1});
        List<LimitingEdge> shown = List.of();
        PaperView main = PaperView.around(bounds, section.pupil().isPresent() ? PARTS : ONLY, 1.04);
        if (section.pupil().isPresent()) {
            PaperView whole = WholeView.of(section, WHOLE);
            WholeView.draw(page, section, whole, WHOLE, colours);
            if (main.scale().paper() > whole.scale().paper()) {
                PartsView.draw(page, section, main, colours);
                shown = DetailViews.chosen(section, COLUMNS);
                DetailViews.draw(page, section, shown, List.of(DETAILS), main, colours);
            } else {
                // A deep layout is no larger in the view of the parts than in that of the whole: the room goes to
                // details.
                main = whole;
                shown = DetailViews.chosen(section, 2 * COLUMNS);
                DetailViews.draw(page, section, shown, List.of(UPPER, DETAILS), main, colours);
            }
        } else {
            PartsView.draw(page, section, main, colours);
        }
        SheetFoot.draw(page, section, FOOT, new SheetFoot.Told(imprint, main.scale(), colours, shown));
        return new SectionSheet(page.marks());
    }

    /** All words on it, one after another. */
    public String words() {
        StringBuilder words = new StringBuilder();
        for (Mark mark : marks) {
            if (mark instanceof Mark.Words each) {
                words.append(each.text()).append('\n');
            }
        }
        return words.toString();
    }

    /** A colour for each part that is cut, in the order of the layout. */
    private static Map<String, String> colours(LayoutSection section) {
        Map<String, String> colours = new LinkedHashMap<>();
        for (Part part : section.layout().parts()) {
            boolean cut = section.bodies().stream().map(CutBody::part).anyMatch(part.name()::equals);
            if (cut) {
                colours.put(part.name(), COLOURS.get(colours.size() % COLOURS.size()));
            }
        }
        // Copies of a part have names of their own.
        for (CutBody body : section.bodies()) {
            colours.computeIfAbsent(body.part(), name -> COLOURS.get(colours.size() % COLOURS.size()));
        }
        return colours;
    }
}
