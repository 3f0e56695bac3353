package darkrim.present;

import darkrim.layout.Requirement;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.tolerance.Contributor;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Margins and deviations in words. */
public final class MarginWords {
    private MarginWords() {}

    /** The unit of the margins of a requirement: {@code mm}, or {@code 1} for relative irradiance. */
    public static String unit(Requirement requirement) {
        return MarginUnit.of(requirement) == MarginUnit.MILLIMETRES ? "mm" : "1";
    }

    /** A margin as a number, such as {@code 0.0312} or {@code >= 20.0}. */
    public static String of(RequirementMargin margin) {
        if (!margin.impossible().isEmpty()) {
            return "cannot be built";
        }
        if (margin.unit() == MarginUnit.MILLIMETRES && Double.isFinite(margin.margin())) {
            // What is only known to be no more must not be told as less.
            return bound(margin)
                    + (isFromAbove(margin) ? Figures.atMost(margin.margin()) : Figures.fineMargin(margin.margin()));
        }
        if (!margin.capped()) {
            return Figures.three(margin.margin());
        }
        return bound(margin)
                + (margin.margin() < 0 ? Figures.atMost(margin.margin()) : Figures.atLeast(margin.margin()));
    }

    /** What stands before a margin of which only a bound is known. */
    static String bound(RequirementMargin margin) {
        return margin.isBound() ? isFromAbove(margin) ? "<= " : ">= " : "";
    }

    private static boolean isFromAbove(RequirementMargin margin) {
        return margin.isBound() && margin.margin() < 0;
    }

    /** A margin with its unit or its standard error, such as {@code -0.153 mm} or {@code 4.2e-06 +- 1.0e-07}. */
    public static String withUnit(RequirementMargin margin) {
        if (!Double.isFinite(margin.margin())) {
            return of(margin);
        }
        if (margin.unit() == MarginUnit.RELATIVE_IRRADIANCE) {
            return margin.standardError() == 0
                    ? of(margin)
                    : Figures.withError(margin.margin(), margin.standardError());
        }
        return millimetres(margin) + " mm";
    }

    /** A known margin in mm with three decimals, without the unit: a bound from above never less than it is, all else never more. */
    static String millimetres(RequirementMargin margin) {
        return bound(margin)
                + (isFromAbove(margin) ? Figures.marginAtMost(margin.margin()) : Figures.margin(margin.margin()));
    }

    /** The verdict that belongs to a margin. */
    static String verdict(RequirementMargin margin) {
        return margin.verdict().map(Verdict::name).orElse("no such part");
    }

    /** The deviations that are not 0, such as {@code opening +0.03 mm, lid tilt z -0.1 deg}. */
    static String deviations(List<Contributor> contributors, List<Double> deviations) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < contributors.size(); i++) {
            if (deviations.get(i) != 0) {
                words.add(Printable.of(contributors.get(i).name()) + " " + signed(deviations.get(i))
                        + unit(contributors.get(i)));
            }
        }
        return words.isEmpty() ? "everything as drawn" : String.join(", ", words);
    }

    /** The tolerance of a contributor, such as {@code +-0.05 mm} or {@code -0.02 +0.05 mm}. */
    static String tolerance(Contributor contributor) {
        double minus = contributor.tolerance().minus();
        double plus = contributor.tolerance().plus();
        return (minus == plus ? "+-" + Figures.limit(plus) : signed(-minus) + " " + signed(plus)) + unit(contributor);
    }

    /** How the deviations of a contributor spread. */
    static String spread(Contributor contributor) {
        return switch (contributor.tolerance().distribution()) {
            case UNIFORM -> "uniform";
            case NORMAL ->
                "normal, end at " + Figures.limit(contributor.tolerance().sigmas()) + " sigma";
            case TRIANGULAR -> "triangular";
        };
    }

    private static String unit(Contributor contributor) {
        return contributor.unit().isEmpty() ? "" : " " + contributor.unit();
    }

    private static String signed(double value) {
        return (value < 0 ? "-" : "+") + Figures.limit(Math.abs(value)).toLowerCase(Locale.ROOT);
    }
}
