package darkrim.present;

import darkrim.layout.Layout;
import darkrim.layout.Requirement;
import darkrim.layout.form.Wording;
import darkrim.study.MarginScope;
import darkrim.study.sweep.SweepPoint;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.SweepSettings;
import darkrim.study.sweep.Turn;
import darkrim.study.sweep.Variation;
import darkrim.verdict.Plan;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A sweep as text: a line for each point, and where requirements change sides. */
public final class SweepReport {
    private static final int MOST_REASONS = 10;

    private final String version;
    private final Ink ink;

    /**
     * @param version version of the program
     * @param ink colour of verdicts
     */
    public SweepReport(String version, Ink ink) {
        this.version = version;
        this.ink = ink;
    }

    /** The text, ended by a line feed. */
    public String of(SweepResult result) {
        Page page = new Page();
        head(result, page);
        page.heading("Points");
        points(result, page);
        impossible(result, page);
        warnings(result, page);
        turns(result, page);
        notes(result, page);
        return page.text();
    }

    private void head(SweepResult result, Page page) {
        Layout layout = result.layout();
        page.paragraph(LayoutWords.title(layout));
        result.variations().forEach(each -> page.paragraph("Varied: " + Printable.of(each.toString())));
        page.paragraph(summary(result));
        result.idle()
                .forEach(name -> page.paragraph(
                        "CAUTION: no result changed with '" + Printable.of(name) + "' between these points"
                                + (measuresMargins(result) ? "." : "; margins were not measured (--margins none).")));
        page.space();
        page.line("file     " + LayoutWords.file(layout));
        page.line("program  Darkrim " + version + ", seed " + result.seed() + ", "
                + samples(result.settings().points().batches()));
    }

    private static String samples(int batches) {
        return Figures.count(Plan.samplesOf(batches)) + " samples for each sampled number"
                + (batches == SweepSettings.LEAST_BATCHES ? ", the least there are" : "");
    }

    private static boolean measuresMargins(SweepResult result) {
        return result.settings().points().margins() != MarginScope.NONE;
    }

    private static String summary(SweepResult result) {
        Map<Optional<Verdict>, Long> counts =
                result.points().stream().collect(Collectors.groupingBy(SweepPoint::verdict, Collectors.counting()));
        long pass = counts.getOrDefault(Optional.of(Verdict.PASS), 0L);
        long fail = counts.getOrDefault(Optional.of(Verdict.FAIL), 0L);
        long open = counts.getOrDefault(Optional.of(Verdict.UNDECIDED), 0L);
        long none = counts.getOrDefault(Optional.<Verdict>empty(), 0L);
        String stopped = result.stopped() ? "Stopped before the end. " : "";
        return stopped + "Of " + Figures.counted(result.points().size(), "point") + ", " + Figures.count(pass)
                + (pass == 1 ? " holds" : " hold") + " every requirement, "
                + Figures.count(fail) + (fail == 1 ? " fails" : " fail") + " at least one"
                + (open > 0 ? ", " + Figures.count(open) + (open == 1 ? " is" : " are") + " undecided" : "")
                + (none > 0 ? ", " + Figures.count(none) + " cannot be built" : "") + ".";
    }

    private void points(SweepResult result, Page page) {
        List<Requirement> requirements = result.layout().requirements();
        boolean named = width(result) <= Page.WIDTH;
        NearestToFailing nearest = new NearestToFailing(requirements, named);
        Table table = new Table();
        for (Variation each : result.variations()) {
            table.numbers(Printable.of(each.dimension()) + (each.unit().isEmpty() ? "" : ", " + each.unit()));
        }
        for (int i = 0; i < requirements.size(); i++) {
            table.words(label(requirements, i, named), ink::cell);
        }
        table.words("nearest to failing");
        for (SweepPoint point : result.points()) {
            List<String> cells = new ArrayList<>();
            result.variations()
                    .forEach(each -> cells.add(Wording.number(point.chosen().get(each.dimension()))));
            requirements.forEach(each ->
                    cells.add(point.verdict(each.name()).map(Verdict::name).orElse(NearestToFailing.NONE)));
            cells.add(nearest.of(point));
            table.row(cells.toArray(String[]::new));
        }
        page.block(table.text());
        if (!named) {
            page.space();
            for (int i = 0; i < requirements.size(); i++) {
                page.line(
                        "[" + (i + 1) + "] " + Printable.of(requirements.get(i).name()));
            }
        }
    }

    private static String label(List<Requirement> requirements, int index, boolean named) {
        return named ? Printable.of(requirements.get(index).name()) : "[" + (index + 1) + "]";
    }

    /** Roughly how wide the table is when requirements are named above their columns. */
    private static int width(SweepResult result) {
        int wide = 40;
        for (Variation each : result.variations()) {
            wide += each.dimension().length() + 8;
        }
        for (Requirement each : result.layout().requirements()) {
            wide += Math.max(Verdict.UNDECIDED.name().length(), each.name().length()) + 2;
        }
        return wide;
    }

    private static void impossible(SweepResult result, Page page) {
        List<SweepPoint> none = result.points().stream()
                .filter(point -> point.verdict().isEmpty())
                .toList();
        if (none.isEmpty()) {
            return;
        }
        page.heading("Points that cannot be built");
        none.stream()
                .limit(MOST_REASONS)
                .forEach(point -> page.paragraph(
                        "", "  ", values(result, point.chosen()) + ": " + Printable.of(point.impossible())));
        if (none.size() > MOST_REASONS) {
            page.line("... and " + Figures.count(none.size() - MOST_REASONS) + " more; --csv names every reason.");
        }
    }

    private static void warnings(SweepResult result, Page page) {
        List<SweepPoint> some = result.points().stream()
                .filter(point -> !point.warnings().isEmpty())
                .toList();
        if (some.isEmpty()) {
            return;
        }
        page.heading("Warnings at points");
        some.stream()
                .limit(MOST_REASONS)
                .forEach(point -> page.paragraph(
                        "", "  ", values(result, point.chosen()) + ": " + Printable.of(point.warnings())));
        if (some.size() > MOST_REASONS) {
            page.line("... and at " + Figures.count(some.size() - MOST_REASONS) + " more; --csv names all.");
        }
    }

    private static String values(SweepResult result, Map<String, Double> chosen) {
        return result.variations().stream()
                .filter(each -> chosen.containsKey(each.dimension()))
                .map(each -> Printable.of(each.dimension()) + " " + value(each, chosen.get(each.dimension())))
                .collect(Collectors.joining(", "));
    }

    private static String value(Variation variation, double value) {
        return Wording.number(value) + (variation.unit().isEmpty() ? "" : " " + variation.unit());
    }

    private void turns(SweepResult result, Page page) {
        if (result.settings().design().spread().isPresent()) {
            return;
        }
        Variation last = result.variations().get(result.variations().size() - 1);
        page.heading("Where requirements change sides along " + Printable.of(last.dimension()));
        if (result.variations().size() > 1) {
            page.paragraph("Shown along the last --vary only, for each combination of the others.");
            page.space();
        }
        if (result.turns().isEmpty()) {
            page.line("None does between these points.");
            return;
        }
        Table table = new Table();
        table.names("requirement");
        if (result.variations().size() > 1) {
            table.words("where");
        }
        table.words("from", ink::cell).numbers("at").words("to", ink::cell).numbers("at");
        for (Turn turn : result.turns()) {
            List<String> cells = new ArrayList<>(
                    List.of(turn.requirement().isEmpty() ? "(the layout)" : Printable.of(turn.requirement())));
            if (result.variations().size() > 1) {
                cells.add(values(result, turn.others()));
            }
            cells.add(word(turn.before()));
            cells.add(value(last, turn.from()));
            cells.add(word(turn.after()));
            cells.add(value(last, turn.to()));
            table.row(cells.toArray(String[]::new));
        }
        page.block(table.text());
    }

    private static String word(Optional<Verdict> verdict) {
        return verdict.map(Verdict::name).orElse("impossible");
    }

    private static void notes(SweepResult result, Page page) {
        page.heading("Notes");
        page.paragraph(
                "A sweep is no verdict on a layout: 'darkrim check' gives that, with more samples and all evidence.");
        page.paragraph(
                "All points have the same random numbers, so that values differ from point to point by less than their"
                        + " errors. Verdicts hold at "
                        + Figures.confidence(result.layout().sampling().confidence())
                        + " for each point alone. Between points nothing was looked at.");
    }
}
