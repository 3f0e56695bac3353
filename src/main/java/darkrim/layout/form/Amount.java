package darkrim.layout.form;

import darkrim.diagnostic.Place;

/** A number as written; its value is known once the quantities are settled. */
public final class Amount implements Value {
    private final Written written;
    private final Kind.Numeric kind;
    private final Place place;
    private double value = Double.NaN;

    Amount(Written written, Kind.Numeric kind, Place place) {
        this.written = written;
        this.kind = kind;
        this.place = place;
    }

    /** What is written. */
    public Written written() {
        return written;
    }

    /** What the table asks for. */
    public Kind.Numeric kind() {
        return kind;
    }

    @Override
    public Place place() {
        return place;
    }

    @Override
    public boolean isWhole() {
        return !Double.isNaN(value);
    }

    /**
     * The value in mm, degrees, or plain.
     *
     * @throws IllegalStateException if it is not known, because of an error that has been reported
     */
    public double value() {
        if (!isWhole()) {
            throw new IllegalStateException("the number at " + place + " has no value");
        }
        return value;
    }

    void settle(double known) {
        value = known;
    }
}
