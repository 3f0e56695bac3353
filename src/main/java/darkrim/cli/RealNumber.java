package darkrim.cli;

import darkrim.layout.form.Wording;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a number in a range, and says what the range is where it is left. */
class RealNumber implements ITypeConverter<Double> {
    private final double least;
    private final double most;
    private final String what;
    private final String unit;

    private RealNumber(double least, double most, String what, String unit) {
        this.least = least;
        this.most = most;
        this.what = what;
        this.unit = unit;
    }

    @Override
    public Double convert(String text) {
        try {
            double number = Decimal.read(text);
            if (number >= least && number <= most) {
                return number;
            }
        } catch (NumberFormatException noNumber) {
            throw refused(text);
        }
        throw refused(text);
    }

    private TypeConversionException refused(String text) {
        return new TypeConversionException("expected " + what + " from " + Wording.number(least) + " to "
                + Wording.number(most) + unit + ", got '" + Wording.shortened(text) + "'");
    }

    /** A length, mm. */
    static final class Length extends RealNumber {
        Length() {
            super(0, 1e6, "a length", " mm");
        }
    }

    /** A width that is not nothing, mm. */
    static final class Width extends RealNumber {
        Width() {
            super(1e-3, 1e3, "a width", " mm");
        }
    }

    /** A height, mm. */
    static final class Height extends RealNumber {
        Height() {
            super(-1e6, 1e6, "a height", " mm");
        }
    }

    /** A share of a flux. */
    static final class FluxShare extends RealNumber {
        FluxShare() {
            super(1e-9, 1, "a share of the star's flux", "");
        }
    }

    /** An angle from a direction, at most a right one, deg. */
    static final class Angle extends RealNumber {
        /** All that a flat surface sees. */
        static final double MOST = 90;

        Angle() {
            super(0.1, MOST, "an angle", " degrees");
        }
    }

    /** A direction about the z axis, deg. */
    static final class Azimuth extends RealNumber {
        Azimuth() {
            super(-360, 360, "an angle", " degrees");
        }
    }

    /** An angular diameter, deg. */
    static final class Diameter extends RealNumber {
        Diameter() {
            super(0.01, 60, "an angular diameter", " degrees");
        }
    }

    /** How many times as large something is shown. */
    static final class Magnification extends RealNumber {
        Magnification() {
            super(0.1, 1000, "a factor", "");
        }
    }
}
