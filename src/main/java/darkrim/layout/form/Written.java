package darkrim.layout.form;

import darkrim.diagnostic.Findings;
import java.math.BigDecimal;
import java.util.Optional;

/** A number as the designer wrote it. */
public sealed interface Written permits Written.Bare, Written.WithUnit, Formula {
    /** The form of a number, a regular expression. */
    String NUMBER = "[-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d+)?";

    /** The text of it. */
    String text();

    /**
     * A number in the units of the file.
     *
     * @param number the number
     * @param text as written
     */
    record Bare(BigDecimal number, String text) implements Written {}

    /**
     * A number with its unit.
     *
     * @param number the number
     * @param unit the unit
     * @param text as written
     */
    record WithUnit(BigDecimal number, Unit unit, String text) implements Written {}

    /** Reads what is written in a scalar; empty, with a finding, where it is none of the three. */
    static Optional<Written> read(Node.Scalar scalar, Kind.Numeric kind, Findings findings) {
        return new WrittenReader(scalar, kind, findings).read();
    }
}
