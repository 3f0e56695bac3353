package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.study.path.PathSettings;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a whole number in a range, and says what the range is where it is left. */
class WholeNumber implements ITypeConverter<Long> {
    private final long least;
    private final long most;

    private WholeNumber(long least, long most) {
        this.least = least;
        this.most = most;
    }

    @Override
    public Long convert(String text) {
        try {
            long number = Long.parseLong(text);
            if (number >= least && number <= most) {
                return number;
            }
        } catch (NumberFormatException notWhole) {
            throw refused(text);
        }
        throw refused(text);
    }

    private TypeConversionException refused(String text) {
        return new TypeConversionException(
                "expected a whole number from " + least + " to " + most + ", got '" + Wording.shortened(text) + "'");
    }

    /** A seed: what a layout may hold, and what a program that reads JSON does not round. */
    static final class Seed extends WholeNumber {
        Seed() {
            super(0, (1L << 53) - 1);
        }
    }

    /** A number of sampled builds. */
    static final class Builds extends WholeNumber {
        Builds() {
            super(1, 1_000_000);
        }
    }

    /** A number of points of a study. */
    static final class Points extends WholeNumber {
        Points() {
            super(1, 1_000_000_000);
        }
    }

    /** A number of cells along a side. */
    static final class Cells extends WholeNumber {
        Cells() {
            super(1, 512);
        }
    }

    /** A number of samples of a cell. */
    static final class CellSamples extends WholeNumber {
        CellSamples() {
            super(2, 1_000_000);
        }
    }

    /** A number of reflections. */
    static final class Reflections extends WholeNumber {
        Reflections() {
            super(1, PathSettings.MOST);
        }
    }

    /** A number of lines of a list. */
    static final class Lines extends WholeNumber {
        Lines() {
            super(1, 1000);
        }
    }

    /** A number of threads. */
    static final class Threads extends WholeNumber {
        Threads() {
            super(1, 1024);
        }
    }
}
