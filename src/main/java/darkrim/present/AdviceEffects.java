package darkrim.present;

import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.advice.Advice;
import darkrim.study.advice.FreeDimension;
import darkrim.study.advice.SmallestChange;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Of advice: the smallest change of each dimension alone that mends a requirement, and what it does to all margins. */
final class AdviceEffects {
    /** Requirements side by side in one table. */
    private static final int BESIDE = 7;

    private AdviceEffects() {}

    /** Values of one dimension, with the margins there. */
    private record Line(String dimension, String value, List<RequirementMargin> margins) {}

    static void write(Page page, Advice advice) {
        page.heading("One dimension alone: the smallest change that mends a requirement");
        Table table = new Table()
                .names("requirement")
                .names("dimension")
                .numbers("now")
                .numbers("then")
                .numbers("change")
                .words("then fails");
        for (RequirementMargin wanting : advice.wanting()) {
            String name = Printable.of(wanting.requirement());
            List<SmallestChange> changes = advice.changes().stream()
                    .filter(change -> change.requirement().equals(wanting.requirement()))
                    .toList();
            if (changes.isEmpty()) {
                table.row(name, none(advice, wanting), "", "", "", "");
            }
            for (SmallestChange change : changes) {
                String unit = unit(advice, change.dimension());
                table.row(
                        name,
                        Printable.of(change.dimension()),
                        Figures.value(change.from()) + unit,
                        Figures.value(change.to()) + unit,
                        Figures.change(change.from(), change.to()) + unit,
                        broken(advice, change));
            }
        }
        page.block(table.text());
        if (!advice.open().isEmpty()) {
            page.space();
            page.paragraph(
                    "What holds in a short look is undecided for want of samples: '--samples' decides it. No change was"
                            + " looked for that mends it.");
        }
        margins(page, advice);
    }

    private static String none(Advice advice, RequirementMargin wanting) {
        if (advice.open().contains(wanting.requirement())) {
            return "holds in a short look";
        }
        return advice.stopped() ? "not looked at" : "none alone does";
    }

    private static void margins(Page page, Advice advice) {
        Map<String, Line> lines = new LinkedHashMap<>();
        for (SmallestChange change : advice.changes()) {
            if (!change.effects().isEmpty()) {
                String value = Figures.value(change.to()) + unit(advice, change.dimension());
                String dimension = Printable.of(change.dimension());
                lines.putIfAbsent(dimension + value, new Line(dimension, value, change.effects()));
            }
        }
        if (lines.isEmpty()) {
            return;
        }
        page.heading("What each of these changes does to every margin");
        List<Line> all = new ArrayList<>(List.of(new Line("as it is now", "", advice.margins())));
        all.addAll(lines.values());
        int count = advice.margins().size();
        for (int from = 0; from < count; from += BESIDE) {
            if (from > 0) {
                page.space();
            }
            page.block(table(all, from, Math.min(count, from + BESIDE)));
        }
        page.space();
        for (int i = 0; i < count; i++) {
            RequirementMargin margin = advice.margins().get(i);
            page.line("[" + (i + 1) + "] " + Printable.of(margin.requirement())
                    + (margin.unit() == MarginUnit.MILLIMETRES ? ", mm" : ", relative irradiance"));
        }
        page.paragraph("Negative: it fails. A question mark: the short look does not decide it.");
    }

    private static String place(Advice advice, String requirement) {
        List<String> names =
                advice.margins().stream().map(RequirementMargin::requirement).toList();
        return "[" + (names.indexOf(requirement) + 1) + "]";
    }

    private static String table(List<Line> lines, int from, int to) {
        Table table = new Table().names("dimension").numbers("value");
        for (int i = from; i < to; i++) {
            table.numbers("[" + (i + 1) + "]");
        }
        for (Line line : lines) {
            List<String> cells = new ArrayList<>(List.of(line.dimension, line.value));
            line.margins.subList(from, to).forEach(margin -> cells.add(cell(margin)));
            table.row(cells.toArray(String[]::new));
        }
        return table.text();
    }

    static String cell(RequirementMargin margin) {
        String number = margin.unit() == MarginUnit.MILLIMETRES && Double.isFinite(margin.margin())
                ? MarginWords.millimetres(margin)
                : MarginWords.of(margin);
        return margin.verdict().filter(verdict -> verdict == Verdict.UNDECIDED).isPresent() ? number + "?" : number;
    }

    private static String broken(Advice advice, SmallestChange change) {
        List<String> names = new ArrayList<>();
        change.effects().stream()
                .filter(effect -> effect.verdict().orElse(Verdict.FAIL) != Verdict.PASS)
                .filter(effect -> !effect.requirement().equals(change.requirement()))
                .forEach(effect -> names.add(place(advice, effect.requirement())
                        + (effect.verdict().orElse(Verdict.FAIL) == Verdict.FAIL ? "" : "?")));
        return change.effects().isEmpty() ? "not looked at" : names.isEmpty() ? "no other" : String.join(" ", names);
    }

    static String unit(Advice advice, String dimension) {
        return advice.dimensions().stream()
                .filter(each -> each.name().equals(dimension))
                .map(FreeDimension::unit)
                .filter(unit -> !unit.isEmpty())
                .map(unit -> " " + unit)
                .findFirst()
                .orElse("");
    }
}
