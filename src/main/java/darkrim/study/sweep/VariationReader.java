package darkrim.study.sweep;

import darkrim.layout.Dimension;
import darkrim.layout.FileUnits;
import darkrim.layout.Quantity;
import darkrim.layout.form.Unit;
import darkrim.layout.form.Wording;
import darkrim.study.LayoutFamily;
import darkrim.study.UnusableStudy;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads what a dimension is to take: {@code wall_tilt = 0 deg to 12 deg step 1}, {@code opening = 37, 37.5, 38} or {@code opening = 36 to 38}.
 * A bare number is in the unit that the layout file says, as everywhere in the file.
 */
public final class VariationReader {
    private static final String FORMS = "expected 'NAME = A to B step S' or 'NAME = A, B, C'";
    private static final Pattern RANGE =
            Pattern.compile("(.*?)\\bto\\b(.*?)(?:\\bstep\\b(.*))?", Pattern.CASE_INSENSITIVE);
    private static final Pattern NUMBER =
            Pattern.compile("([-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d{1,3})?)\\s*([^\\s\\d]*)");
    /** No length or angle of a layout is larger, and none that matters is smaller. */
    private static final BigDecimal LARGEST = new BigDecimal("1e9");

    private static final BigDecimal SMALLEST = new BigDecimal("1e-9");
    private static final int LONGEST = 10_000;

    private final LayoutFamily family;
    private final FileUnits units;
    private final String forms;

    /**
     * @param family the layouts whose dimensions are named
     */
    public VariationReader(LayoutFamily family) {
        this(family, FORMS);
    }

    /**
     * @param family the layouts whose dimensions are named
     * @param forms what is expected, for messages
     */
    public VariationReader(LayoutFamily family, String forms) {
        this.forms = forms;
        this.family = family;
        this.units = FileUnits.of(family.name(), family.content());
    }

    /**
     * Reads one.
     *
     * @throws UnusableStudy saying what is wrong with it
     */
    public Variation read(String text) throws UnusableStudy {
        int equals = text.indexOf('=');
        if (equals < 0 || text.length() > LONGEST) {
            throw new UnusableStudy("cannot read '" + Wording.shortened(text) + "', " + forms);
        }
        String name = text.substring(0, equals).strip();
        String values = text.substring(equals + 1).strip();
        Dimension dimension = family.dimension(name)
                .orElseThrow(() -> new UnusableStudy("there is no dimension '" + Wording.shortened(name) + "' in "
                        + Wording.oneLine(family.name()) + ", "
                        + Wording.suggestion(name, family.written().dimensions().keySet())));
        Matcher range = RANGE.matcher(values);
        return range.matches() ? range(dimension, range) : list(dimension, values);
    }

    private Variation range(Dimension dimension, Matcher range) throws UnusableStudy {
        BigDecimal from = number(dimension, range.group(1));
        BigDecimal to = number(dimension, range.group(2));
        String name = dimension.name();
        if (from.compareTo(to) == 0) {
            throw new UnusableStudy("the range of '" + name + "' is empty: it begins where it ends");
        }
        if (from.compareTo(to) > 0) {
            throw new UnusableStudy("the range of '" + name + "' runs backwards, expected the smaller value first: "
                    + range.group(2).strip() + " to " + range.group(1).strip());
        }
        if (range.group(3) == null) {
            return Variation.range(name, dimension.kind(), from, to, BigDecimal.ZERO);
        }
        BigDecimal step = number(dimension, range.group(3));
        if (step.signum() <= 0) {
            throw new UnusableStudy("the step of '" + name + "' is " + (step.signum() == 0 ? "0" : "negative")
                    + ", expected more than 0");
        }
        if (step.compareTo(to.subtract(from)) > 0) {
            throw new UnusableStudy("the step of '" + name + "' is longer than its range");
        }
        return Variation.range(name, dimension.kind(), from, to, step);
    }

    private Variation list(Dimension dimension, String values) throws UnusableStudy {
        List<BigDecimal> numbers = new ArrayList<>();
        for (String each : values.split(",", -1)) {
            BigDecimal number = number(dimension, each);
            if (numbers.stream().anyMatch(known -> known.compareTo(number) == 0)) {
                throw new UnusableStudy("'" + dimension.name() + "' is to be " + each.strip() + " twice");
            }
            numbers.add(number);
        }
        return Variation.list(dimension.name(), dimension.kind(), numbers);
    }

    /**
     * Reads a length along a dimension, such as the width down to which is refined.
     *
     * @throws UnusableStudy unless it is a number above 0 in a fitting unit
     */
    public double width(String dimension, String text) throws UnusableStudy {
        BigDecimal width = number(family.dimension(dimension).orElseThrow(), text);
        if (width.signum() <= 0) {
            throw new UnusableStudy("the width is " + Wording.shortened(text.strip()) + ", expected more than 0");
        }
        return width.doubleValue();
    }

    /** In mm, degrees or plain. */
    private BigDecimal number(Dimension dimension, String text) throws UnusableStudy {
        if (text.isBlank()) {
            throw new UnusableStudy("a value of '" + dimension.name() + "' is missing, " + forms);
        }
        Matcher matcher = NUMBER.matcher(text.strip());
        if (!matcher.matches()) {
            throw new UnusableStudy("cannot read '" + Wording.shortened(text.strip()) + "' as a value of '"
                    + dimension.name() + "', " + forms);
        }
        BigDecimal number = new BigDecimal(matcher.group(1));
        BigDecimal inside = number.multiply(size(dimension, matcher.group(2)), MathContext.DECIMAL128);
        BigDecimal magnitude = inside.abs();
        if (magnitude.compareTo(LARGEST) > 0 || (magnitude.signum() > 0 && magnitude.compareTo(SMALLEST) < 0)) {
            throw new UnusableStudy("'" + Wording.shortened(text.strip()) + "' is no sensible value of '"
                    + dimension.name() + "', expected 0 or a size from 1e-9 to 1e9");
        }
        return inside;
    }

    private BigDecimal size(Dimension dimension, String word) throws UnusableStudy {
        Quantity kind = dimension.kind();
        if (word.isEmpty()) {
            return switch (kind) {
                case LENGTH -> units.length().size();
                case ANGLE -> units.angle().size();
                case NUMBER -> BigDecimal.ONE;
            };
        }
        Unit unit = Unit.of(word).orElse(null);
        boolean fits = unit != null
                && unit.measure().equals((kind == Quantity.LENGTH ? Unit.MM : Unit.DEG).measure())
                && kind != Quantity.NUMBER;
        if (!fits) {
            String what = switch (kind) {
                case LENGTH -> "a length, expected " + Wording.anyOf(Unit.symbols(Unit.MM.measure()));
                case ANGLE -> "an angle, expected " + Wording.anyOf(Unit.symbols(Unit.DEG.measure()));
                case NUMBER -> "a plain number, expected no unit";
            };
            throw new UnusableStudy(
                    "'" + Wording.shortened(word) + "' is no unit for '" + dimension.name() + "', which is " + what);
        }
        return unit.size();
    }
}
