package darkrim.layout.form;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The schema of a number, a number with a unit, or a formula. */
final class NumericSchema {
    private static final String NUMBER = "[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]+)?";
    /** A number and a word: a unit, right or wrong, and no formula. */
    private static final String NUMBER_AND_WORD = NUMBER + "\\s*[\\p{L}\u00b0\u00b5%\"]+\\s*$";

    private NumericSchema() {}

    static Map<String, Object> of(Kind.Numeric kind) {
        Measure measure = kind.measure().orElse(null);
        Map<String, Object> number = new LinkedHashMap<>();
        number.put("type", "number");
        // A bare length or angle is in the units of the file: only its sign can be judged here.
        limit(number, kind.range(), Measure.NUMBER.equals(measure));
        Map<String, Object> text = new LinkedHashMap<>();
        text.put("type", "string");
        text.put("pattern", pattern(measure));
        text.put("maxLength", Formula.LONGEST);
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("description", description(kind));
        schema.put("anyOf", List.of(number, text));
        return schema;
    }

    private static String description(Kind.Numeric kind) {
        if (kind.measure().isEmpty()) {
            return "A number, a number with a unit, or a formula over named dimensions.";
        }
        Measure measure = kind.measure().get();
        if (measure.equals(Measure.NUMBER)) {
            return "A plain number " + kind.range().describe("") + ", or a formula.";
        }
        boolean length = measure.equals(Measure.LENGTH);
        String symbols = Wording.anyOf(Unit.symbols(measure));
        return (length ? "A length " : "An angle ") + kind.range().describe(length ? " mm" : " deg")
                + ": a number, a number with " + symbols + ", or a formula.";
    }

    private static void limit(Map<String, Object> number, Range range, boolean plain) {
        if (plain) {
            number.put(range.leastIncluded() ? "minimum" : "exclusiveMinimum", range.least());
            number.put(range.mostIncluded() ? "maximum" : "exclusiveMaximum", range.most());
        } else if (range.least() > 0 || (range.least() == 0 && !range.leastIncluded())) {
            number.put("exclusiveMinimum", 0);
        } else if (range.least() == 0) {
            number.put("minimum", 0);
        }
    }

    /** With a unit of the right measure, or something that is not a number and a word. */
    private static String pattern(Measure measure) {
        String formula = "(?!" + NUMBER_AND_WORD + ")[\\s\\S]+";
        if (Measure.NUMBER.equals(measure)) {
            return "^\\s*" + formula + "$";
        }
        List<String> symbols = Unit.symbols(measure == null ? Measure.NUMBER : measure);
        String units = String.join("|", symbols).replace("um", "[u\u00b5\u03bc]m");
        return "^\\s*(" + NUMBER + "\\s*(" + units + ")\\s*|" + formula + ")$";
    }
}
