package darkrim.present;

import darkrim.present.map.LightMap;
import darkrim.study.irradiance.CheckedLight;
import java.nio.file.Path;
import java.util.List;

/**
 * What maps hold, as text: their means and sizes.
 *
 * @param version version of the program
 */
public record MapReport(String version) {
    /**
     * The report.
     *
     * @param maps the maps
     * @param checked what they are of
     * @param files the files they were written into
     */
    public String of(List<LightMap> maps, CheckedLight checked, List<Path> files) {
        Page page = new Page();
        page.paragraph(LayoutWords.title(checked.layout()));
        page.paragraph(Figures.counted(maps.size(), "map") + " written into "
                + String.join(
                        ", ",
                        files.stream()
                                .map(file -> Printable.of(file.toString()))
                                .toList()) + ".");
        page.space();
        page.line("file     " + LayoutWords.file(checked.layout()));
        page.line("program  Darkrim " + version + ", seed " + checked.seed());
        String unit = maps.get(0).unit().unit();
        page.heading("Means" + (unit.isEmpty() ? " (relative irradiance)" : " (" + unit + ")"));
        Table table =
                new Table().names("surface").words("light").numbers("cells").numbers("mean +- error");
        for (LightMap map : maps) {
            table.row(
                    Printable.of(map.surface()),
                    map.kind().words(),
                    map.grid().columns() + " x " + map.grid().rows(),
                    map.isProvedDark() ? "proved dark" : Figures.withError(map.mean(), map.meanError()));
        }
        page.block(table.text());
        if (!maps.get(0).unit().words().isEmpty()) {
            page.space();
            page.paragraph(maps.get(0).unit().words());
        }
        return page.text();
    }
}
