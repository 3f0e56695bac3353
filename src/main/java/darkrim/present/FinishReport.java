package darkrim.present;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A list of finishes as a table of reflectances, with what they are and where the numbers come from below. */
public final class FinishReport {
    private static final double[] ANGLES = {0, 45, 60, 80};

    private FinishReport() {}

    /** The list as text. */
    public static String of(List<ListedFinish> finishes) {
        Page page = new Page();
        page.paragraph(
                "Of light that falls at these angles to the normal, what share is reflected in all directions together:");
        page.space();
        Table table = new Table().names("finish").words("band");
        for (double angle : ANGLES) {
            table.numbers(angle == 0 ? "straight on" : (int) angle + " deg");
        }
        table.numbers("mirror at 80 deg");
        String last = "";
        Map<String, String> notes = new LinkedHashMap<>();
        for (ListedFinish each : finishes) {
            String[] cells = new String[ANGLES.length + 3];
            cells[0] = each.name().equals(last) ? "" : Printable.of(each.name());
            cells[1] = each.band();
            for (int i = 0; i < ANGLES.length; i++) {
                cells[i + 2] = Figures.percent(each.reflectance(ANGLES[i]));
            }
            cells[ANGLES.length + 2] = Figures.percent(each.reflection().mirror(StrictMath.cos(Math.toRadians(80))));
            table.row(cells);
            last = each.name();
            notes.putIfAbsent(each.name(), each.what());
        }
        page.block(table.text());
        page.heading("What they are, and where the numbers come from");
        notes.forEach((name, what) -> page.paragraph(
                Printable.of(name) + ": ", "  ", what.isEmpty() ? "no source stated" : Printable.of(what)));
        return page.text();
    }
}
