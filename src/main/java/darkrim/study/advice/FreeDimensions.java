package darkrim.study.advice;

import darkrim.layout.Dimension;
import darkrim.layout.form.Unit;
import darkrim.layout.form.Wording;
import darkrim.study.LayoutFamily;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Which named dimensions may change: those that are plain values in the file and that nobody asked to keep. */
final class FreeDimensions {
    /** A number and perhaps a unit; numbers with more digits are of no use as a dimension. */
    private static final Pattern PLAIN =
            Pattern.compile("[-+]?(?:[0-9]{1,30}[.]?[0-9]{0,30}|[.][0-9]{1,30})(?:[eE][-+]?[0-9]{1,3})?\\s*(\\p{L}*)");

    private FreeDimensions() {}

    static List<FreeDimension> of(LayoutFamily family, AdviceSettings settings) throws UnusableAdvice {
        Map<String, Dimension> named = family.written().dimensions();
        for (String name : settings.keep()) {
            known(family, name);
        }
        for (String name : settings.ranges().keySet()) {
            Dimension dimension = known(family, name);
            if (isFormula(dimension)) {
                throw new UnusableAdvice("'" + Wording.oneLine(name) + "' is a formula, " + dimension.text()
                        + "; expected a dimension that is a plain value");
            }
            if (settings.keep().contains(name)) {
                throw new UnusableAdvice("'" + name + "' cannot be kept and have a range");
            }
        }
        List<FreeDimension> free = new ArrayList<>();
        for (Dimension dimension : named.values()) {
            if (!isFormula(dimension) && !settings.keep().contains(dimension.name())) {
                free.add(ranged(FreeDimension.of(dimension), settings.ranges()));
            }
        }
        if (free.isEmpty()) {
            boolean kept = named.values().stream().anyMatch(each -> !isFormula(each));
            throw new UnusableAdvice(
                    kept
                            ? "every dimension that could change is kept, expected at least one without '--keep'"
                            : "the layout has no dimension that could change, expected at least one under 'dimensions:' that"
                                    + " is a plain value");
        }
        return free;
    }

    private static FreeDimension ranged(FreeDimension free, Map<String, AdviceSettings.Bounds> ranges)
            throws UnusableAdvice {
        AdviceSettings.Bounds range = ranges.get(free.name());
        if (range == null) {
            return free;
        }
        if (!(range.least() < range.most())) {
            throw new UnusableAdvice("the range of '" + free.name() + "' is empty or reversed");
        }
        if (!(range.least() <= free.value() && free.value() <= range.most())) {
            throw new UnusableAdvice("the range of '" + free.name() + "' does not hold its value in the file, "
                    + Wording.number(free.value()) + (free.unit().isEmpty() ? "" : " " + free.unit()));
        }
        return free.within(range.least(), range.most());
    }

    private static Dimension known(LayoutFamily family, String name) throws UnusableAdvice {
        Map<String, Dimension> named = family.written().dimensions();
        Dimension dimension = named.get(name);
        if (dimension == null) {
            throw new UnusableAdvice("there is no dimension '" + Wording.oneLine(name) + "' in "
                    + Wording.oneLine(family.name()) + ", "
                    + Wording.suggestion(name, named.keySet()));
        }
        return dimension;
    }

    private static boolean isFormula(Dimension dimension) {
        Matcher plain = PLAIN.matcher(dimension.text().strip());
        return !plain.matches()
                || (!plain.group(1).isEmpty() && Unit.of(plain.group(1)).isEmpty());
    }
}
