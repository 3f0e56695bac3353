package darkrim.present;

import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.DarkProof;
import java.nio.file.Path;
import java.util.List;

/**
 * What maps hold, as text: their means and sizes.
 *
 * @param version version of the program
 */
public record MapReport(String version) {
    /**
     * One class of light on one surface.
     *
     * @param surface name of the surface
     * @param light which light
     * @param columns cells across
     * @param rows cells upward
     * @param mean mean over the surface
     * @param error its standard error
     * @param proof whether this light is proved to be none
     */
    public record Line(
            String surface, String light, int columns, int rows, double mean, double error, DarkProof proof) {}

    /**
     * The report.
     *
     * @param lines the maps
     * @param unit unit of their values; empty for relative irradiance
     * @param meaning what 1 stands for; may be empty
     * @param checked what they are of
     * @param files the files they were written into
     */
    public String of(List<Line> lines, String unit, String meaning, CheckedLight checked, List<Path> files) {
        Page page = new Page();
        page.paragraph(LayoutWords.title(checked.layout()));
        page.paragraph(Figures.counted(lines.size(), "map") + " written into "
                + String.join(
                        ", ",
                        files.stream()
                                .map(file -> Printable.of(file.toString()))
                                .toList())
                + ".");
        page.space();
        page.line("file     " + LayoutWords.file(checked.layout()));
        page.line("program  Darkrim " + version + ", seed " + checked.seed());
        page.heading("Means" + (unit.isEmpty() ? " (relative irradiance)" : " (" + unit + ")"));
        Table table =
                new Table().names("surface").words("light").numbers("cells").numbers("mean +- error");
        for (Line line : lines) {
            table.row(
                    Printable.of(line.surface()),
                    line.light(),
                    line.columns() + " x " + line.rows(),
                    line.proof() != DarkProof.NONE
                            ? line.proof().words()
                            : Figures.withError(line.mean(), line.error()));
        }
        page.block(table.text());
        if (!meaning.isEmpty()) {
            page.space();
            page.paragraph(meaning);
        }
        return page.text();
    }
}
