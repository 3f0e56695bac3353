package darkrim.layout.form;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The units a value may carry. Lengths become mm, angles degrees. */
public enum Unit {
    /** Millimetre. */
    MM("mm", Measure.LENGTH, BigDecimal.ONE),
    /** Micrometre. */
    UM("um", Measure.LENGTH, new BigDecimal("0.001")),
    /** Centimetre. */
    CM("cm", Measure.LENGTH, BigDecimal.TEN),
    /** Metre. */
    M("m", Measure.LENGTH, new BigDecimal(1000)),
    /** Inch, 25.4 mm exactly. */
    IN("in", Measure.LENGTH, new BigDecimal("25.4")),
    /** Degree. */
    DEG("deg", Measure.ANGLE, BigDecimal.ONE),
    /** Radian. */
    RAD("rad", Measure.ANGLE, degrees(1)),
    /** Milliradian. */
    MRAD("mrad", Measure.ANGLE, degrees(1000)),
    /** Minute of arc. */
    ARCMIN("arcmin", Measure.ANGLE, BigDecimal.ONE.divide(new BigDecimal(60), MathContext.DECIMAL128)),
    /** Second of arc. */
    ARCSEC("arcsec", Measure.ANGLE, BigDecimal.ONE.divide(new BigDecimal(3600), MathContext.DECIMAL128));

    /** Words that people write for a unit; they are suggested, not accepted. */
    private static final Map<String, String> OTHER_WORDS = Map.ofEntries(
            Map.entry("inch", "in"),
            Map.entry("inches", "in"),
            Map.entry("\"", "in"),
            Map.entry("micron", "um"),
            Map.entry("microns", "um"),
            Map.entry("millimetre", "mm"),
            Map.entry("millimeter", "mm"),
            Map.entry("metre", "m"),
            Map.entry("meter", "m"),
            Map.entry("degree", "deg"),
            Map.entry("degrees", "deg"),
            Map.entry("\u00b0", "deg"),
            Map.entry("radian", "rad"),
            Map.entry("radians", "rad"));

    private final String symbol;
    // A record of two whole numbers, which the check does not know.
    @SuppressWarnings("ImmutableEnumChecker")
    private final Measure measure;

    private final BigDecimal size;

    Unit(String symbol, Measure measure, BigDecimal size) {
        this.symbol = symbol;
        this.measure = measure;
        this.size = size;
    }

    /** How it is written, such as {@code mm}. */
    public String symbol() {
        return symbol;
    }

    /** A length or an angle. */
    public Measure measure() {
        return measure;
    }

    /** Its size in mm or degrees. */
    public BigDecimal size() {
        return size;
    }

    /** The unit of this symbol. The micro sign is read as u. */
    public static Optional<Unit> of(String symbol) {
        String plain = symbol.replace('\u00b5', 'u').replace('\u03bc', 'u');
        return Arrays.stream(values()).filter(unit -> unit.symbol.equals(plain)).findFirst();
    }

    /** The symbols of all units that measure this; of all units for a plain number. */
    public static List<String> symbols(Measure measure) {
        return Arrays.stream(values())
                .filter(unit -> measure.equals(Measure.NUMBER) || unit.measure.equals(measure))
                .map(Unit::symbol)
                .toList();
    }

    /** {@code did you mean 'x'?} for a word that is no unit. */
    static String suggestion(String word, Measure measure) {
        String other = OTHER_WORDS.get(word);
        return other != null ? "did you mean '" + other + "'?" : Wording.suggestion(word, symbols(measure));
    }

    /** Degrees in the given part of a radian. */
    private static BigDecimal degrees(int part) {
        BigDecimal pi = new BigDecimal("3.14159265358979323846264338327950288");
        return new BigDecimal(180).divide(pi.multiply(new BigDecimal(part)), MathContext.DECIMAL128);
    }
}
