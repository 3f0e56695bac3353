package darkrim.layout;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.form.Node;
import darkrim.layout.form.Unit;
import darkrim.layout.form.Wording;
import darkrim.layout.form.Written;
import darkrim.layout.form.YamlText;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Puts other values of named dimensions into the text of a layout file. Only the digits are replaced: units, comments, order, quotes and line
 * ends stay as they are. The text is read again before it is handed over, and says exactly the values that were asked for.
 */
public final class DimensionEdit {
    private static final Pattern NUMBER =
            Pattern.compile("(\\s*)(" + Written.NUMBER + ")(\\s*)([\\p{L}\u00b0\u00b5]*)(\\s*)");
    /** More characters than a number needs that is of some use as a dimension. */
    private static final int LONGEST_PLAIN = 40;

    private final String file;
    private final byte[] content;
    private final String text;
    private final Formulas formulas;

    private DimensionEdit(String file, byte[] content, Formulas formulas) {
        this.file = file;
        this.content = content;
        this.text = new String(content, StandardCharsets.UTF_8);
        this.formulas = formulas;
    }

    /** What to do with a dimension that is a formula over others. */
    public enum Formulas {
        /** Leave it, and refuse. */
        REFUSE,
        /** Put a number in its place, which no longer follows the others. */
        REPLACE
    }

    /** Characters of the text that give way to others. */
    private record Change(int from, int to, String instead) {}

    /**
     * The text with other values.
     *
     * @param file name of the file, for messages
     * @param content the bytes of a layout file without errors, UTF-8
     * @param values values by name of the dimension, in mm, degrees or plain
     * @param formulas what to do with formulas
     * @return the bytes of the changed text
     * @throws RefusedEdit if a value cannot be put in its place; nothing is changed then
     */
    public static byte[] of(String file, byte[] content, Map<String, Double> values, Formulas formulas)
            throws RefusedEdit {
        return new DimensionEdit(file, content, formulas).with(values);
    }

    private byte[] with(Map<String, Double> values) throws RefusedEdit {
        Layout layout = LayoutReader.read(file, content)
                .layout()
                .orElseThrow(() -> new RefusedEdit(whole(), "the file cannot be read, expected a layout"));
        TreeMap<Integer, Change> changes = new TreeMap<>();
        for (Map.Entry<String, Double> entry : new TreeMap<>(values).entrySet()) {
            Dimension dimension = layout.dimensions().get(entry.getKey());
            if (dimension == null) {
                throw new RefusedEdit(whole(), "there is no dimension '" + Wording.shortened(entry.getKey()) + "'");
            }
            Change change = change(dimension, entry.getValue());
            changes.put(change.from, change);
        }
        StringBuilder changed = new StringBuilder(text);
        changes.descendingMap().values().forEach(change -> changed.replace(change.from, change.to, change.instead));
        byte[] result = changed.toString().getBytes(StandardCharsets.UTF_8);
        confirm(result, values);
        return result;
    }

    private Place whole() {
        return new Place(file, 0, 0);
    }

    private Change change(Dimension dimension, double value) throws RefusedEdit {
        if (!Double.isFinite(value)) {
            throw refused(dimension, "cannot be " + value + ", expected a finite number");
        }
        Node.Scalar scalar = scalar(dimension.name())
                .filter(found -> found.quote() >= 0)
                .orElseThrow(() -> refused(dimension, "is not written in one piece on one line"));
        int at = offset(scalar);
        if (at < 0 || !text.startsWith(scalar.text(), at)) {
            throw refused(dimension, "is not written character by character");
        }
        Matcher number = NUMBER.matcher(scalar.text());
        if (number.matches() && dimension.value() == value) {
            // The text says it already, in the designer's own way.
            return new Change(at, at, "");
        }
        if (number.matches()) {
            Optional<Unit> own = Unit.of(number.group(4));
            return new Change(
                    at + number.start(2), at + number.end(2), digits(value, own.orElse(unitOfFile(dimension))));
        }
        if (formulas == Formulas.REFUSE) {
            throw refused(
                    dimension,
                    "is the formula '" + Wording.shortened(scalar.text())
                            + "', expected a number: change what it is reckoned from, or ask for a number in its place");
        }
        return new Change(at, at + scalar.text().length(), digits(value, unitOfFile(dimension)));
    }

    private static RefusedEdit refused(Dimension dimension, String why) {
        return new RefusedEdit(dimension.place(), "the dimension '" + dimension.name() + "' " + why);
    }

    private Optional<Node.Scalar> scalar(String name) {
        return YamlText.parse(file, content, new Findings())
                .flatMap(root -> find(root, "dimensions"))
                .flatMap(dimensions -> find(dimensions, name))
                .flatMap(value -> value instanceof Node.Mapping ? find(value, "value") : Optional.of(value))
                .filter(Node.Scalar.class::isInstance)
                .map(Node.Scalar.class::cast);
    }

    private static Optional<Node> find(Node node, String key) {
        return node instanceof Node.Mapping mapping ? mapping.find(key) : Optional.empty();
    }

    /** Where the text of a scalar begins, by the lines and columns of the YAML library; -1 where there is no such place. */
    private int offset(Node.Scalar scalar) {
        Place place = scalar.placeOf(0);
        int at = text.startsWith("\uFEFF") ? 1 : 0;
        for (int line = 1; line < place.line(); at++) {
            if (at >= text.length()) {
                return -1;
            }
            boolean first = text.charAt(at) == '\r' && text.startsWith("\n", at + 1);
            line += !first && (text.charAt(at) == '\n' || text.charAt(at) == '\r') ? 1 : 0;
        }
        int points = place.column() - 1;
        return text.codePointCount(at, text.length()) < points ? -1 : text.offsetByCodePoints(at, points);
    }

    private Unit unitOfFile(Dimension dimension) {
        FileUnits units = FileUnits.of(file, content);
        return switch (dimension.kind()) {
            case LENGTH -> units.length();
            case ANGLE -> units.angle();
            case NUMBER -> Unit.MM;
        };
    }

    /** The shortest number of a unit that is read as a value. */
    private static String digits(double value, Unit unit) {
        BigDecimal exact = new BigDecimal(value).divide(unit.size(), MathContext.DECIMAL128);
        BigDecimal found = exact;
        for (int digits = MathContext.DECIMAL128.getPrecision(); digits > 0; digits--) {
            BigDecimal shorter = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
            if (shorter.multiply(unit.size(), MathContext.DECIMAL128).doubleValue() != value) {
                break;
            }
            found = shorter;
        }
        String plain = found.signum() == 0 ? "0" : found.stripTrailingZeros().toPlainString();
        return plain.length() <= LONGEST_PLAIN
                ? plain
                : found.stripTrailingZeros().toString();
    }

    /** Reads the changed text: it must be a layout with exactly these values. */
    private void confirm(byte[] changed, Map<String, Double> values) throws RefusedEdit {
        LayoutReading reading = LayoutReader.read(file, changed);
        Optional<Finding> error = reading.findings().stream()
                .filter(finding -> finding.severity() == Finding.Severity.ERROR)
                .findFirst();
        if (error.isPresent()) {
            throw new RefusedEdit(whole(), "with these values the file would have errors: " + error.get());
        }
        for (Map.Entry<String, Double> entry : values.entrySet()) {
            Dimension dimension = reading.layout().orElseThrow().dimensions().get(entry.getKey());
            if (dimension == null || dimension.value() != entry.getValue()) {
                throw new RefusedEdit(
                        dimension == null ? whole() : dimension.place(),
                        "the dimension '" + entry.getKey() + "' cannot be written as exactly " + entry.getValue());
            }
        }
    }
}
