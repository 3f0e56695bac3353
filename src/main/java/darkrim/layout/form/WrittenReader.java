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
    private static final Pattern COMMA = Pattern.compile("[-+]?\\d+,\\d+\\s*\\p{L}*");

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
        Matcher withWord = WITH_WORD.matcher(text);
        if (withWord.matches()) {
            return withUnit(withWord.group(1), withWord.group(2));
        }
        if (COMMA.matcher(text).matches()) {
            return refuse(
                    "number-form",
                    "'" + shown + "' has a decimal comma, expected a point: '" + shown.replace(',', '.') + "'");
        }
        if (scalar.style() == Node.Style.NUMBER) {
            return text.startsWith("0")
                    ? refuse("number-form", "'" + shown + "' is not a decimal number, expected such as 12.5")
                    : refuse("not-finite", "'" + shown + "' is not finite, expected " + kind.expected());
        }
        return Formula.parse(scalar, findings).map(formula -> formula);
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
