package darkrim.present;

import darkrim.light.Estimate;
import darkrim.scene.Warmth;
import darkrim.study.pixel.PixelPlace;
import darkrim.study.pixel.PixelSight;
import darkrim.study.pixel.PixelView;
import darkrim.study.pixel.SeenThing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * What pixels see as plain text.
 *
 * @param version version of the program
 * @param verbose whether every point is shown with all that it sees
 */
public record PixelReport(String version, boolean verbose) {
    /** Lines of a table of things seen. */
    private static final int MOST_ROWS = 14;

    /** The report, lines ended by a line feed. */
    public String of(PixelView view) {
        Page page = new Page();
        page.paragraph(LayoutWords.title(view.layout()));
        PixelWords.summary(view).forEach(page::paragraph);
        page.space();
        page.line("file     " + LayoutWords.file(view.layout()));
        page.line("program  Darkrim " + version + ", seed " + view.seed()
                + view.sights().stream()
                        .findFirst()
                        .map(sight -> ", " + Figures.counted(sight.rays(), "ray") + " from each point")
                        .orElse("")
                + (view.stopped() ? "; stopped before the end" : ""));
        view.warmth()
                .ifPresent(warmth -> page.line("band     " + band(warmth) + ", quantum efficiency "
                        + Figures.limit(view.layout().warmth().orElseThrow().quantumEfficiency())));
        points(page, view);
        for (PixelSight sight : view.sights()) {
            if (verbose || view.search().isEmpty() || sight.place().why() == PixelPlace.Why.WORST) {
                seen(page, sight);
                if (view.warmth().isPresent()) {
                    warm(page, sight);
                }
            }
        }
        notes(page, view);
        return page.text();
    }

    private static String band(Warmth warmth) {
        return Figures.limit(warmth.from()) + " to " + Figures.limit(warmth.to()) + " um";
    }

    private static void points(Page page, PixelView view) {
        if (view.sights().size() < 2) {
            return;
        }
        boolean warm = view.warmth().isPresent();
        page.heading("Points (projected solid angles in sr" + (warm ? "; warm light in photons/s)" : ")"));
        Table table = new Table()
                .names("surface")
                .words("at u,v")
                .words("")
                .numbers("pupil")
                .numbers("open")
                .numbers("struck")
                .numbers("once reflected");
        if (warm) {
            table.numbers("photons/s");
        }
        for (PixelSight sight : view.sights()) {
            List<String> cells = new ArrayList<>(List.of(
                    Printable.of(sight.place().point().surface()),
                    String.format(
                            Locale.ROOT,
                            "%.3f,%.3f",
                            sight.place().point().u(),
                            sight.place().point().v()),
                    sight.place().why().words(),
                    Figures.three(sight.seen(SeenThing.Kind.PUPIL)),
                    Figures.three(sight.seen(SeenThing.Kind.OPEN)),
                    Figures.three(sight.lit().mean()),
                    Figures.three(sight.onceReflected().mean())));
            if (warm) {
                cells.add(Figures.three(sight.warm().photons().mean()));
            }
            table.row(cells.toArray(String[]::new));
        }
        page.block(table.text());
    }

    private void seen(Page page, PixelSight sight) {
        page.heading("What " + Printable.of(sight.place().point().text()) + " sees"
                + (sight.place().why() == PixelPlace.Why.WORST ? " (the worst pixel found)" : ""));
        Table table = new Table()
                .names("first thing met")
                .numbers("projected, sr")
                .numbers("of pi, %")
                .numbers("struck, sr")
                .numbers("sends once reflected");
        List<SeenThing> shown = shown(sight.things());
        for (SeenThing thing : shown) {
            table.row(
                    Printable.of(thing.name()),
                    measured(thing.seen()),
                    share(thing.seen().mean() / Math.PI),
                    thing.kind() == SeenThing.Kind.SURFACE ? unlessNone(thing.lit()) : "",
                    thing.kind() == SeenThing.Kind.SURFACE ? unlessNone(thing.onceReflected()) : "");
        }
        List<SeenThing> rest =
                sight.things().subList(shown.size(), sight.things().size());
        if (!rest.isEmpty()) {
            table.row(
                    "(" + rest.size() + " more: --verbose)",
                    Figures.three(sum(rest)),
                    share(sum(rest) / Math.PI),
                    Figures.three(
                            rest.stream().mapToDouble(each -> each.lit().mean()).sum()),
                    Figures.three(rest.stream()
                            .mapToDouble(each -> each.onceReflected().mean())
                            .sum()));
        }
        table.row(
                "all",
                String.format(Locale.ROOT, "%.4f", sum(sight.things())),
                "100",
                measured(sight.lit()),
                measured(sight.onceReflected()));
        page.block(table.text());
        page.paragraph(
                "Exact, without random numbers: the pupil fills " + Figures.limit(sight.exactPupil()) + " sr of it.");
    }

    private void warm(Page page, PixelSight sight) {
        page.heading("Warm light on " + (sight.hasPixel() ? "a pixel" : "1 mm2") + " at "
                + Printable.of(sight.place().point().text()));
        Table table = new Table()
                .names("first thing met")
                .numbers("K")
                .numbers("emits, photons/s")
                .numbers("W")
                .numbers("reflects, photons/s");
        List<SeenThing> byLight = sight.things().stream()
                .filter(thing -> thing.photons() > 0)
                .sorted(Comparator.comparingDouble(SeenThing::photons)
                        .reversed()
                        .thenComparing(SeenThing::name))
                .toList();
        List<SeenThing> shown = shown(byLight);
        for (SeenThing thing : shown) {
            table.row(
                    Printable.of(thing.name()),
                    Double.isNaN(thing.kelvin()) ? "" : Figures.limit(thing.kelvin()),
                    unlessNone(thing.emitted().photons()),
                    Figures.three(thing.emitted().watts().mean()),
                    unlessNone(thing.reflected().photons()));
        }
        List<SeenThing> rest = byLight.subList(shown.size(), byLight.size());
        if (!rest.isEmpty()) {
            table.row(
                    "(" + rest.size() + " more: --verbose)",
                    "",
                    Figures.three(rest.stream()
                            .mapToDouble(each -> each.emitted().photons().mean())
                            .sum()),
                    Figures.three(rest.stream()
                            .mapToDouble(each -> each.emitted().watts().mean())
                            .sum()),
                    Figures.three(rest.stream()
                            .mapToDouble(each -> each.reflected().photons().mean())
                            .sum()));
        }
        page.block(table.text());
        page.paragraph("All together " + measured(sight.warm().photons()) + " photons/s, "
                + measured(sight.warm().watts()) + " W. By what the layout states it is proved to be no more than "
                + Figures.atMost(sight.mostPhotons())
                + " photons/s, which black walls as warm as the warmest would give.");
    }

    private List<SeenThing> shown(List<SeenThing> things) {
        return verbose || things.size() <= MOST_ROWS ? things : things.subList(0, MOST_ROWS - 1);
    }

    private static double sum(List<SeenThing> things) {
        return things.stream().mapToDouble(thing -> thing.seen().mean()).sum();
    }

    private static String share(double share) {
        return Figures.three(100 * share);
    }

    private static String measured(Estimate estimate) {
        return Figures.withError(estimate.mean(), estimate.standardError());
    }

    private static String unlessNone(Estimate estimate) {
        return estimate.mean() == 0 ? "none seen" : measured(estimate);
    }

    private static void notes(Page page, PixelView view) {
        if (!view.warnings().isEmpty()) {
            page.heading("Warnings");
            view.warnings().forEach(warning -> page.paragraph("- ", "  ", Printable.of(warning.toString())));
        }
        page.space();
        PixelWords.notes(view).forEach(page::paragraph);
    }
}
