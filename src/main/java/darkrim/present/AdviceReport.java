package darkrim.present;

import darkrim.study.RequirementMargin;
import darkrim.study.advice.Advice;
import darkrim.study.advice.Exclusion;
import darkrim.study.advice.FreeDimension;
import darkrim.study.advice.Nearest;
import darkrim.study.advice.Proposal;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What to change, as plain text.
 *
 * @param version version of the program
 * @param ink whether verdicts are coloured
 */
public record AdviceReport(String version, Ink ink) {
    /** The report, lines ended by a line feed. */
    public String of(Advice advice) {
        Page page = new Page();
        page.paragraph(LayoutWords.title(advice.before().layout()));
        page.paragraph(sentence(advice));
        advice.exclusion().ifPresent(exclusion -> page.paragraph(words(exclusion)));
        page.space();
        page.line("file     " + LayoutWords.file(advice.before().layout()));
        page.line("program  Darkrim " + version + ", seed "
                + advice.before().effort().seed());
        if (!advice.wanting().isEmpty()) {
            advice.proposal().ifPresent(proposal -> proposal(page, advice, proposal));
            advice.nearest().ifPresent(nearest -> nearest(page, advice, nearest));
            AdviceEffects.write(page, advice);
            AdviceSlopes.write(page, advice);
        }
        BlacknessSection.write(page, advice.blackness());
        if (!advice.wanting().isEmpty()) {
            ranges(page, advice);
        }
        return page.text();
    }

    private static String sentence(Advice advice) {
        List<RequirementMargin> wanting = advice.wanting();
        if (wanting.isEmpty()) {
            return advice.stopped()
                    ? "Stopped before every requirement was decided."
                    : "Every requirement holds: nothing needs to change.";
        }
        String begin = Figures.counted(wanting.size(), "requirement") + (wanting.size() == 1 ? " does" : " do")
                + " not pass: "
                + names(wanting.stream().map(RequirementMargin::requirement).toList()) + ". ";
        Optional<Proposal> proposal = advice.proposal();
        if (proposal.isPresent()) {
            Verdict verdict = proposal.get().check().judgement().verdict();
            return begin
                    + switch (verdict) {
                        case PASS -> "With the values proposed below the layout passes a full check.";
                        case UNDECIDED ->
                            "With the values proposed below nothing fails, but a full check does not decide everything.";
                        case FAIL -> "The values proposed below passed a short look but fail a full check.";
                    };
        }
        if (advice.isOpenAlone()) {
            return begin + "A short look takes the layout to pass as it is: more samples decide ('--samples').";
        }
        return begin
                + (advice.stopped()
                        ? "Stopped before there was a proposal."
                        : "No values within the ranges were found with which the layout passes.");
    }

    private static String names(List<String> names) {
        return names.stream().map(Printable::of).collect(Collectors.joining(", "));
    }

    private static String words(Exclusion exclusion) {
        return exclusion.single()
                ? "WARNING: nothing within the ranges makes '" + Printable.of(exclusion.one())
                        + "' hold, as far as the values looked at tell."
                : "WARNING: '" + Printable.of(exclusion.one()) + "' and '" + Printable.of(exclusion.other())
                        + "' exclude each other within the ranges, as far as the values looked at tell: what mends the one"
                        + " breaks the other.";
    }

    private void proposal(Page page, Advice advice, Proposal proposal) {
        page.heading("Proposal: the smallest change of all dimensions together that passes");
        values(page, advice, proposal.values());
        page.space();
        page.paragraph("Smallest: the sum of all changes, each in multiples of the dimension's tolerance, is "
                + Figures.three(proposal.scaledChange())
                + ". All other dimensions stay. Least change is least margin:");
        page.space();
        Table table = new Table()
                .names("requirement")
                .words("now", ink::cell)
                .words("then", ink::cell)
                .numbers("margin now")
                .numbers("margin then");
        for (int i = 0; i < advice.margins().size(); i++) {
            RequirementMargin now = advice.margins().get(i);
            RequirementMargin then = proposal.margins().get(i);
            table.row(
                    Printable.of(now.requirement()),
                    MarginWords.verdict(now),
                    MarginWords.verdict(then),
                    MarginWords.withUnit(now),
                    MarginWords.withUnit(then));
        }
        page.block(table.text());
    }

    private static void nearest(Page page, Advice advice, Nearest nearest) {
        page.heading("The nearest values that were found");
        if (nearest.values().isEmpty()) {
            page.paragraph("Those of the file: no change was found that brings all requirements nearer together.");
            return;
        }
        values(page, advice, nearest.values());
        page.space();
        page.paragraph(
                nearest.failing().isEmpty()
                        ? "Every requirement holds there by a hair only."
                        : "There still does not pass: " + names(nearest.failing()) + ".");
    }

    private static void values(Page page, Advice advice, Map<String, Double> values) {
        Table table = new Table()
                .names("dimension")
                .numbers("now")
                .numbers("then")
                .numbers("change")
                .numbers("in tolerances");
        for (FreeDimension each : advice.dimensions()) {
            Double value = values.get(each.name());
            if (value != null) {
                double change = Math.abs(value - each.value());
                table.row(
                        Printable.of(each.name()),
                        Figures.value(each.value()) + unit(each),
                        Figures.value(value) + unit(each),
                        Figures.change(each.value(), value) + unit(each),
                        Figures.three(change / each.scale()));
            }
        }
        page.block(table.text());
    }

    private static void ranges(Page page, Advice advice) {
        page.heading("What was allowed to change");
        Table table = new Table()
                .names("dimension")
                .numbers("now")
                .numbers("least tried")
                .numbers("most tried")
                .numbers("tolerance");
        for (FreeDimension each : advice.dimensions()) {
            table.row(
                    Printable.of(each.name()),
                    Figures.value(each.value()) + unit(each),
                    Figures.value(each.least()) + unit(each),
                    Figures.value(each.most()) + unit(each),
                    "+-" + Figures.value(each.scale()) + unit(each));
        }
        page.block(table.text());
        page.space();
        page.paragraph("Darkrim does not know what can be made or bought: --keep NAME leaves a dimension as it is,"
                + " --range 'NAME = LEAST to MOST' says how far it may go. Tolerance: that of the layout; where it states"
                + " none, a general tolerance for the size.");
    }

    private static String unit(FreeDimension dimension) {
        return dimension.unit().isEmpty() ? "" : " " + dimension.unit();
    }
}
