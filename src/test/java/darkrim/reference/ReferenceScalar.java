package darkrim.reference;

import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * One number of a case with a known answer.
 *
 * @param from the case
 * @param index which of its answers, from 0
 */
public record ReferenceScalar(ReferenceCase from, int index) {
    /** Every number of every case of a family, A to J. */
    public static Stream<ReferenceScalar> family(String letter) {
        return ReferenceCases.family(letter).stream().flatMap(ReferenceScalar::of);
    }

    /** Every number of a case. */
    public static Stream<ReferenceScalar> of(ReferenceCase from) {
        return IntStream.range(0, from.values().size()).mapToObj(i -> new ReferenceScalar(from, i));
    }

    /** The answer. */
    public double value() {
        return from.values().get(index);
    }

    /** Short name, counted from 1 where the case has several numbers. */
    public String id() {
        return from.values().size() == 1 ? from.id() : from.id() + "[" + (index + 1) + "]";
    }

    /** Shown as the name of a test. */
    @Override
    public String toString() {
        return id() + " " + from.title();
    }
}
