package darkrim.present;

import darkrim.light.Estimate;
import darkrim.light.Reflector;
import darkrim.scene.Surface;
import darkrim.study.path.PathResult;
import darkrim.study.path.ReceiverPaths;
import darkrim.study.path.TopPath;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Light paths as plain text.
 *
 * @param version version of the program
 */
public record PathReport(String version) {
    /** The report, lines ended by a line feed. */
    public String of(PathResult result) {
        Page page = new Page();
        page.paragraph(LayoutWords.title(result.layout()));
        page.paragraph("Light paths onto " + Figures.counted(result.receivers().size(), "surface") + ", up to "
                + Figures.counted(result.settings().most(), "reflection") + "."
                + (result.stopped() ? " The work was stopped; what was finished is shown." : ""));
        page.space();
        page.line("file     " + LayoutWords.file(result.layout()));
        LayoutWords.meshes(result.layout()).forEach(page::line);
        page.line("program  Darkrim " + version + ", seed " + result.seed() + samples(result));
        for (ReceiverPaths receiver : result.receivers()) {
            page.heading(Printable.of(receiver.receiver().name()));
            orders(page, receiver);
            if (!receiver.strongest().isEmpty()) {
                paths(page, result, receiver);
                places(page, receiver);
                rays(page, receiver);
            }
        }
        notes(page, result);
        return page.text();
    }

    private static String samples(PathResult result) {
        return result.receivers().isEmpty()
                ? ""
                : ", up to "
                        + Figures.counted(
                                result.receivers().stream()
                                        .mapToLong(each -> each.tally().samples())
                                        .max()
                                        .getAsLong(),
                                "sample")
                        + " of each surface";
    }

    private static void orders(Page page, ReceiverPaths receiver) {
        Table table = new Table()
                .words("light")
                .numbers("irradiance +- error")
                .numbers("of the reflected")
                .numbers("paths");
        double whole = receiver.reflected().mean();
        for (int order = 0; order <= receiver.most(); order++) {
            table.row(
                    PathWords.times(order),
                    value(receiver.order(order)),
                    order == 0 || whole == 0
                            ? ""
                            : Figures.percent(receiver.order(order).mean() / whole),
                    order == 0 ? "" : Figures.count(receiver.paths(order)));
        }
        if (receiver.most() > 1) {
            table.row("all of these, reflected", value(receiver.reflected()), "100.0 %", "");
        }
        Estimate left = receiver.leftOut();
        table.row(
                PathWords.times(receiver.most() + 1) + ", left out",
                value(left),
                whole == 0 ? "" : Figures.percent(left.mean() / whole),
                "");
        page.block(table.text());
        page.space();
        page.paragraph(further(receiver));
    }

    private static String further(ReceiverPaths receiver) {
        if (receiver.leftOut().mean() == 0) {
            return "No light was found that is reflected more often.";
        }
        return receiver.further().isPresent()
                ? "Still more reflections bring about "
                        + Figures.three(receiver.further().getAsDouble())
                        + " more, if each brings as much less as the last."
                : "The last two do not fall: how much still more reflections bring cannot be told.";
    }

    private static String value(Estimate estimate) {
        return estimate.samples() < 2 ? "not sampled" : Values.measured(estimate);
    }

    private static void paths(Page page, PathResult result, ReceiverPaths receiver) {
        List<Surface> surfaces = result.scene().reflecting();
        page.space();
        Table table = new Table()
                .numbers("path")
                .words("kind")
                .names("pupil, via")
                .words("by")
                .numbers("struck at")
                .numbers("share")
                .numbers("irradiance +- error");
        int number = 0;
        for (int order = 1; order <= receiver.most(); order++) {
            List<TopPath> shown = receiver.strongest(order);
            for (TopPath path : shown) {
                number++;
                row(table, surfaces, path, number);
            }
            long rest = receiver.paths(order) - shown.size();
            if (rest > 0) {
                table.row(
                        "",
                        "",
                        Figures.counted(rest, "other") + ", " + PathWords.times(order),
                        "",
                        "",
                        Figures.percent(
                                receiver.rest(order) / receiver.reflected().mean()),
                        "");
            }
        }
        page.block(table.text());
    }

    private static void row(Table table, List<Surface> surfaces, TopPath path, int number) {
        for (int i = 0; i < path.path().order(); i++) {
            Reflector reflector = path.path().reflectors().get(i);
            table.row(
                    i == 0 ? String.valueOf(number) : "",
                    i == 0 ? PathWords.kind(path.path()) : "",
                    Printable.of(surfaces.get(reflector.surface()).name()),
                    PathWords.part(reflector),
                    PathWords.degrees(path.incidences().get(i).mean()),
                    i == 0 ? Figures.percent(path.share()) : "",
                    i == 0 ? value(path.irradiance()) : "");
        }
    }

    private static void places(Page page, ReceiverPaths receiver) {
        page.space();
        page.paragraph(
                "Where a path is brightest on the receiver, and where on the surface before it most of it comes from:"
                        + " the middle of a cell, share of the path's light in it, area of the cell");
        page.space();
        Table table = new Table()
                .numbers("path")
                .words("on the receiver, mm")
                .numbers("share")
                .numbers("mm2")
                .words("on the surface before, mm")
                .numbers("share")
                .numbers("mm2");
        int number = 0;
        for (TopPath path : receiver.strongest()) {
            number++;
            table.row(
                    String.valueOf(number),
                    EvidenceWords.point(path.onReceiver().centre()),
                    Figures.percent(path.onReceiver().share()),
                    Figures.three(path.onReceiver().area()),
                    EvidenceWords.point(path.onLast().centre()),
                    Figures.percent(path.onLast().share()),
                    Figures.three(path.onLast().area()));
        }
        page.block(table.text());
    }

    private static void rays(Page page, ReceiverPaths receiver) {
        page.space();
        page.paragraph(
                "A line of light for each path, to draw in CAD, mm: on the pupil, each reflection, on the receiver");
        page.space();
        int number = 0;
        for (TopPath path : receiver.strongest()) {
            number++;
            page.paragraph(
                    String.format(Locale.ROOT, "%4d  ", number),
                    "      ",
                    path.example().stream().map(EvidenceWords::point).collect(Collectors.joining("  ")));
        }
    }

    private static void notes(Page page, PathResult result) {
        if (!result.warnings().isEmpty()) {
            page.heading("Warnings");
            result.warnings().forEach(warning -> page.paragraph("- ", "  ", Printable.of(warning.toString())));
        }
        page.space();
        page.paragraph(
                "Sampled: values are means over the surface, relative to what the unobstructed pupil gives at the origin,"
                        + " facing +z; shares are of all reflected light up to the number of reflections asked for. 'struck at':"
                        + " angle of incidence, mean over the path's light. A path that no sample met is not listed, which"
                        + " proves nothing: 'darkrim check' judges.");
        page.paragraph("Not modelled: "
                + Cautions.NOT_MODELLED.stream()
                        .filter(effect -> !effect.equals(Cautions.REFLECTED_AGAIN))
                        .collect(Collectors.joining(", "))
                + ".");
    }
}
