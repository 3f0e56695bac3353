package darkrim.layout.form;

import darkrim.diagnostic.Findings;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tells number, number with unit and formula apart. */
final class WrittenReader {
    private static final Pattern BARE = Pattern.compile(Written.NUMBER);
    private static final Pattern WITH_WORD = Pattern.compile("(" + Written.NUMBER + ")\\s*([\\p{L}\u00b0\u00b5%\"]+)");
    private static final Pattern PERCENT = Pattern.compile("(" + Written.NUMBER + ")\\s*%");
    /** Two lengths as drawings have them, such as 130 x 100 mm. */
    private static final Pattern TIMES = Pattern.compile(
            "(" + Written.NUMBER + ")\\s*(\\p{L}{0,6})\\s*[xX\u00d7]\\s*(" + Written.NUMBER + ")\\s*(\\p{L}{0,6})");
    /** What text programs make of a minus sign. */
    private static final Pattern LONG_DASH = Pattern.compile("[\u2010-\u2015\u2212]");

    private static final Pattern COMMA = Pattern.compile("[-+]?\\d+,\\d+\\s*\\p{L}*");
    private static final Pattern THOUSANDS = Pattern.compile("[-+]?[1-9]\\d{0,2},\\d{3}\\s*\\p{L}*");
    /** How notes begin in other languages, and in YAML where the space before is missing. */
    private static final Pattern COMMENT = Pattern.compile("//|#|/\\*");

    private static final Pattern WITH_TOLERANCE = Pattern.compile("(.+?)\\s*(?:\u00b1|\\+/-|\\s\\+-\\s)\\s*(.+)");

    private final Node.Scalar scalar;
    private final Kind.Numeric kind;
    private final Findings findings;
    private final String text;
    /** The text, shortened for messages. */
    private final String shown;

    WrittenReader(Node.Scalar scalar, Kind.Numeric kind, Findings findings) {
        this.scalar = scalar;
        this.kind = kind;
        this.findings = findings;
        this.text = scalar.text().strip();
        this.shown = Wording.shortened(text);
    }

    Optional<Written> read() {
        if (text.length() > Formula.LONGEST) {
            return refuse("formula", "the formula is too long, expected at most " + Formula.LONGEST + " characters");
        }
        if (BARE.matcher(text).matches()) {
            return number(text).map(number -> new Written.Bare(number, text));
        }
        if (LONG_DASH.matcher(text).find()) {
            return refuse("number-form", "'" + shown + "' has a long dash, expected the minus sign '-'");
        }
        if (COMMENT.matcher(text).find()) {
            return refuse(
                    "number-form",
                    "'" + shown + "' holds more than a number, expected a note to begin with # after a space");
        }
        Matcher tolerance = WITH_TOLERANCE.matcher(text);
        if (tolerance.matches()) {
            return refuse(
                    "number-form",
                    "'" + shown + "' is a value with a tolerance, expected one number; a named dimension takes {value: "
                            + withUnitOf(tolerance.group(1), tolerance.group(2)) + ", tolerance: " + tolerance.group(2)
                            + "}");
        }
        Matcher percent = PERCENT.matcher(text);
        if (percent.matches()) {
            return refuse(
                    "unit",
                    "'" + shown + "' is in percent, expected "
                            + kind.expected()
                            + (kind.measure().filter(Measure.NUMBER::equals).isPresent()
                                    ? ": " + Wording.number(Double.parseDouble(percent.group(1)) / 100)
                                    : ""));
        }
        Matcher times = TIMES.matcher(text);
        if (times.matches()) {
            return refuse(
                    "formula",
                    "'" + shown + "' is two numbers, expected one or, where a list is taken, [" + times.group(1)
                            + times.group(2) + ", " + times.group(3) + times.group(4) + "]");
        }
        Matcher withWord = WITH_WORD.matcher(text);
        if (withWord.matches()) {
            return withUnit(withWord.group(1), withWord.group(2));
        }
        if (COMMA.matcher(text).matches()) {
            String point = "'" + shown.replace(',', '.') + "'";
            return refuse(
                    "number-form",
                    THOUSANDS.matcher(text).matches()
                            ? "'" + shown + "' has a comma, expected a point before decimals, " + point
                                    + ", and nothing between thousands, '" + shown.replace(",", "") + "'"
                            : "'" + shown + "' has a decimal comma, expected a point: " + point);
        }
        if (scalar.style() == Node.Style.NUMBER) {
            return text.startsWith("0")
                    ? refuse("number-form", "'" + shown + "' is not a decimal number, expected such as 12.5")
                    : refuse("not-finite", "'" + shown + "' is not finite, expected " + kind.expected());
        }
        return Formula.parse(scalar, findings).map(formula -> formula);
    }

    /** The value of 2.4 +- 0.05 mm is in mm, too. */
    private static String withUnitOf(String value, String tolerance) {
        Matcher unit = WITH_WORD.matcher(tolerance);
        return BARE.matcher(value).matches() && unit.matches() ? value + " " + unit.group(2) : value;
    }

    private Optional<Written> withUnit(String digits, String word) {
        Optional<Unit> unit = Unit.of(word);
        Measure wanted = kind.measure().orElse(Measure.NUMBER);
        if (unit.isEmpty()) {
            if (kind.measure().filter(Measure.NUMBER::equals).isPresent()) {
                return refuse("unit", "'" + shown + "' has a unit, expected a plain number");
            }
            return refuse(
                    "unknown-unit", "unknown unit '" + word + "' in '" + shown + "', " + Unit.suggestion(word, wanted));
        }
        if (kind.measure().isPresent() && !unit.get().measure().equals(wanted)) {
            String expected = wanted.equals(Measure.NUMBER)
                    ? "a plain number without a unit"
                    : wanted + " in " + Wording.anyOf(Unit.symbols(wanted));
            return refuse("unit", "'" + shown + "' is " + unit.get().measure() + ", expected " + expected);
        }
        return number(digits).map(number -> new Written.WithUnit(number, unit.get(), text));
    }

    private Optional<BigDecimal> number(String digits) {
        if (!Double.isFinite(Double.parseDouble(digits))) {
            refuse("not-finite", "'" + shown + "' is too large for a number, expected " + kind.expected());
            return Optional.empty();
        }
        // A double has no exponent below -324; the decimal number would carry it on.
        return Optional.of(Double.parseDouble(digits) == 0 ? BigDecimal.ZERO : new BigDecimal(digits));
    }

    private Optional<Written> refuse(String code, String message) {
        findings.error(code, scalar.place(), message);
        return Optional.empty();
    }
}
