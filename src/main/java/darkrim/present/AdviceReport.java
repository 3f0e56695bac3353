package darkrim.present;

import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.advice.Advice;
import darkrim.study.advice.Blackness;
import darkrim.study.advice.Exclusion;
import darkrim.study.advice.FreeDimension;
import darkrim.study.advice.Proposal;
import darkrim.study.advice.Slope;
import darkrim.study.advice.SmallestChange;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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
        page.space();
        page.line("file     " + LayoutWords.file(advice.before().layout()));
        page.line("program  Darkrim " + version + ", seed "
                + advice.before().effort().seed());
        if (!advice.wanting().isEmpty()) {
            advice.proposal().ifPresent(proposal -> proposal(page, advice, proposal));
            ranges(page, advice);
            changes(page, advice);
            slopes(page, advice);
        }
        blackness(page, advice);
        return page.text();
    }

    private static String sentence(Advice advice) {
        List<RequirementMargin> wanting = advice.wanting();
        if (wanting.isEmpty()) {
            return "Every requirement holds: nothing needs to change.";
        }
        String names = String.join(
                ", ",
                wanting.stream().map(each -> Printable.of(each.requirement())).toList());
        String begin = Figures.counted(wanting.size(), "requirement") + (wanting.size() == 1 ? " does" : " do")
                + " not pass: " + names + ". ";
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
        if (advice.stopped()) {
            return begin + "Stopped before there was a proposal.";
        }
        return begin + "No values within the ranges were found that pass. "
                + advice.exclusion().map(AdviceReport::words).orElse("No two requirements alone exclude each other.");
    }

    private static String words(Exclusion exclusion) {
        return exclusion.single()
                ? "WARNING: no single dimension makes '" + Printable.of(exclusion.one()) + "' hold within its range."
                : "WARNING: '" + Printable.of(exclusion.one()) + "' and '" + Printable.of(exclusion.other())
                        + "' exclude each other within the ranges, as far as changes of one dimension at a time tell.";
    }

    private void proposal(Page page, Advice advice, Proposal proposal) {
        page.heading("Smallest change of all dimensions together");
        Table table =
                new Table().names("dimension").numbers("from").numbers("to").numbers("change");
        for (FreeDimension each : advice.dimensions()) {
            Double value = proposal.values().get(each.name());
            if (value != null) {
                table.row(
                        Printable.of(each.name()),
                        Figures.length(each.value()) + unit(each),
                        Figures.length(value) + unit(each),
                        signed(value - each.value()) + unit(each));
            }
        }
        page.block(table.text());
        page.space();
        page.paragraph("Smallest: the sum of all changes, 1 mm or 1 deg counted as 1, is "
                + Figures.three(proposal.scaledChange())
                + ". It leaves little margin: 'darkrim check' shows how much.");
        page.space();
        Table verdicts =
                new Table().names("requirement").words("before", ink::cell).words("then", ink::cell);
        proposal.check()
                .judgement()
                .requirements()
                .forEach(each -> verdicts.row(
                        Printable.of(each.requirement().name()),
                        verdict(advice.margins(), each.requirement().name()),
                        each.verdict().name()));
        page.block(verdicts.text());
    }

    private static String verdict(List<RequirementMargin> margins, String requirement) {
        return margins.stream()
                .filter(each -> each.requirement().equals(requirement))
                .map(MarginWords::verdict)
                .findFirst()
                .orElse("");
    }

    private static void ranges(Page page, Advice advice) {
        page.heading("What may change");
        Table table = new Table()
                .names("dimension")
                .numbers("now")
                .numbers("least tried")
                .numbers("most tried");
        for (FreeDimension each : advice.dimensions()) {
            table.row(
                    Printable.of(each.name()),
                    Figures.length(each.value()) + unit(each),
                    Figures.length(each.least()) + unit(each),
                    Figures.length(each.most()) + unit(each));
        }
        page.block(table.text());
    }

    private static void changes(Page page, Advice advice) {
        page.heading("One dimension at a time: the smallest change that makes a requirement hold");
        Table table = new Table()
                .names("requirement")
                .names("dimension")
                .numbers("from")
                .numbers("to")
                .names("then does not pass");
        for (RequirementMargin wanting : advice.wanting()) {
            String name = Printable.of(wanting.requirement());
            List<SmallestChange> changes = advice.changes().stream()
                    .filter(change -> change.requirement().equals(wanting.requirement()))
                    .toList();
            if (changes.isEmpty()) {
                table.row(name, "none within its range", "", "", "");
            }
            for (SmallestChange change : changes) {
                String unit = unit(advice, change.dimension());
                table.row(
                        name,
                        Printable.of(change.dimension()),
                        Figures.length(change.from()) + unit,
                        Figures.length(change.to()) + unit,
                        broken(change));
                name = "";
            }
        }
        page.block(table.text());
        for (SmallestChange change : advice.changes()) {
            effects(page, advice, change);
        }
    }

    private static void effects(Page page, Advice advice, SmallestChange change) {
        if (change.effects().isEmpty()) {
            return;
        }
        page.space();
        page.line("Margins at " + Printable.of(change.dimension()) + " " + Figures.length(change.to())
                + unit(advice, change.dimension()) + ":");
        Table table = new Table()
                .names("requirement")
                .words("before")
                .words("then")
                .numbers("margin before")
                .numbers("margin then");
        for (int i = 0; i < change.effects().size(); i++) {
            RequirementMargin then = change.effects().get(i);
            RequirementMargin before = advice.margins().get(i);
            table.row(
                    Printable.of(then.requirement()),
                    MarginWords.verdict(before),
                    MarginWords.verdict(then),
                    MarginWords.withUnit(before),
                    MarginWords.withUnit(then));
        }
        page.block(table.text());
    }

    private static String broken(SmallestChange change) {
        List<String> names = new ArrayList<>();
        change.effects().stream()
                .filter(effect -> !effect.holds())
                .filter(effect -> !effect.requirement().equals(change.requirement()))
                .forEach(effect -> names.add(Printable.of(effect.requirement())));
        return change.effects().isEmpty() ? "not looked at" : names.isEmpty() ? "no other" : String.join(", ", names);
    }

    private static void slopes(Page page, Advice advice) {
        if (advice.slopes().isEmpty()) {
            return;
        }
        page.heading("Slopes: how the margin grows with each dimension");
        Table table = new Table().names("requirement").names("dimension").numbers("slope");
        for (RequirementMargin wanting : advice.wanting()) {
            for (Slope slope : advice.slopes()) {
                if (slope.requirement().equals(wanting.requirement())) {
                    String per = unit(advice, slope.dimension()).strip();
                    table.row(
                            Printable.of(slope.requirement()),
                            Printable.of(slope.dimension()),
                            (slope.unit() == MarginUnit.MILLIMETRES
                                            ? Figures.three(slope.perUnit()) + " mm"
                                            : Figures.withError(slope.perUnit(), slope.standardError()))
                                    + (per.isEmpty() ? "" : " per " + per));
                }
            }
        }
        page.block(table.text());
        if (advice.slopes().stream()
                .noneMatch(slope -> slope.unit() == MarginUnit.MILLIMETRES && slope.perUnit() == 0)) {
            return;
        }
        page.space();
        page.paragraph("A slope of 0 with a requirement that fails: its worst surface is lit all over, so that a small "
                + "change makes no difference yet; the smallest changes above tell more.");
    }

    private static void blackness(Page page, Advice advice) {
        if (advice.blackness().isEmpty()) {
            return;
        }
        page.heading("How black it must be, all else as it is");
        Table table = new Table()
                .names("requirement")
                .names("finish")
                .numbers("reflectance")
                .words("fails above")
                .numbers("share of the light");
        for (Blackness each : advice.blackness()) {
            table.row(
                    Printable.of(each.requirement()),
                    Printable.of(each.finish()),
                    Figures.three(each.reflectance()),
                    words(each),
                    Figures.percent(Math.min(1, each.share())));
        }
        page.block(table.text());
    }

    private static String words(Blackness each) {
        if (each.anyWillDo()) {
            return "never, even at 1";
        }
        if (each.noneWillDo()) {
            return "fails whatever it is: other finishes alone give too much";
        }
        return Figures.three(each.most()) + "  (" + Figures.atLeast(each.low()) + " to "
                + (each.high() > 1 ? "1" : Figures.atMost(each.high())) + ")";
    }

    private static String signed(double value) {
        return (value > 0 ? "+" : "") + Figures.length(value);
    }

    private static String unit(FreeDimension dimension) {
        return dimension.unit().isEmpty() ? "" : " " + dimension.unit();
    }

    private static String unit(Advice advice, String dimension) {
        return advice.dimensions().stream()
                .filter(each -> each.name().equals(dimension))
                .map(AdviceReport::unit)
                .findFirst()
                .orElse("");
    }
}
