package darkrim.cli;

import darkrim.layout.form.Wording;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a number in a range, and says what the range is where it is left. */
class RealNumber implements ITypeConverter<Double> {
    private final double least;
    private final double most;
    private final String what;

    private RealNumber(double least, double most, String what) {
        this.least = least;
        this.most = most;
        this.what = what;
    }

    @Override
    public Double convert(String text) {
        try {
            double number = Double.parseDouble(text.strip());
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
                + Wording.number(most) + ", got '" + Wording.shortened(text) + "'");
    }

    /** A width, mm. */
    static final class Width extends RealNumber {
        Width() {
            super(1e-3, 1e3, "a width in mm");
        }
    }

    /** A height, mm. */
    static final class Height extends RealNumber {
        Height() {
            super(-1e6, 1e6, "a height in mm");
        }
    }

    /** A share of a flux. */
    static final class FluxShare extends RealNumber {
        FluxShare() {
            super(1e-9, 1, "a share of the star's flux");
        }
    }

    /** A direction about the z axis, deg. */
    static final class Azimuth extends RealNumber {
        Azimuth() {
            super(-360, 360, "an angle in degrees");
        }
    }

    /** An angular diameter, deg. */
    static final class Diameter extends RealNumber {
        Diameter() {
            super(0.01, 60, "an angular diameter in degrees");
        }
    }
}
