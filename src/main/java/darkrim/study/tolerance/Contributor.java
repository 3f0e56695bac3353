package darkrim.study.tolerance;

import darkrim.layout.Distribution;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import darkrim.layout.Quantity;
import darkrim.layout.Tolerance;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TriangularDistribution;

/**
 * One thing that deviates from build to build, by itself: a named dimension, or a part along or about one axis.
 *
 * @param name name for tables, such as {@code opening} or {@code lid shift x}
 * @param kind what its deviation measures
 * @param tolerance how far it may deviate
 * @param acts what deviates
 * @param of name of the dimension or part
 * @param axis 0, 1, 2 for x, y, z of a part
 */
public record Contributor(String name, Quantity kind, Tolerance tolerance, Acts acts, String of, int axis) {
    /** Deviations are rounded to this share of a unit, so that they are the same numbers on every machine and in every table. */
    private static final double STEPS = 1e9;

    private static final String[] AXES = {"x", "y", "z"};

    /** What deviates. */
    public enum Acts {
        /** The value of a dimension. */
        DIMENSION,
        /** The place of a part. */
        SHIFT,
        /** The tilt of a part. */
        TILT
    }

    /** All contributors of a layout: dimensions, then parts, in the order of the file; none whose tolerance is 0. */
    static List<Contributor> of(Layout layout) {
        List<Contributor> all = new ArrayList<>();
        layout.dimensions()
                .forEach((name, dimension) -> dimension
                        .tolerance()
                        .ifPresent(tolerance ->
                                all.add(new Contributor(name, dimension.kind(), tolerance, Acts.DIMENSION, name, 0))));
        for (Part part : layout.parts()) {
            part.tolerance().ifPresent(tolerance -> {
                for (int axis = 0; axis < AXES.length; axis++) {
                    all.add(new Contributor(
                            part.name() + " shift " + AXES[axis],
                            Quantity.LENGTH,
                            tolerance.shift().get(axis),
                            Acts.SHIFT,
                            part.name(),
                            axis));
                }
                for (int axis = 0; axis < AXES.length; axis++) {
                    all.add(new Contributor(
                            part.name() + " tilt " + AXES[axis],
                            Quantity.ANGLE,
                            tolerance.tilt().get(axis),
                            Acts.TILT,
                            part.name(),
                            axis));
                }
            });
        }
        all.removeIf(contributor -> contributor.tolerance.isNothing());
        return List.copyOf(all);
    }

    /** Unit of the deviation: {@code mm}, {@code deg} or empty. */
    public String unit() {
        return switch (kind) {
            case LENGTH -> "mm";
            case ANGLE -> "deg";
            case NUMBER -> "";
        };
    }

    /** Mean deviation of many builds. */
    double mean() {
        double middle = (tolerance.plus() - tolerance.minus()) / 2;
        // A triangle's mean is that of its corners: -minus, 0 and plus.
        return tolerance.distribution() == Distribution.TRIANGULAR ? middle * 2 / 3 : middle;
    }

    /** Variance of the deviation over many builds. */
    double variance() {
        double minus = tolerance.minus();
        double plus = tolerance.plus();
        double half = (plus + minus) / 2;
        return switch (tolerance.distribution()) {
            case UNIFORM -> half * half / 3;
            case NORMAL -> half * half / (tolerance.sigmas() * tolerance.sigmas());
            case TRIANGULAR -> (plus * plus + plus * minus + minus * minus) / 18;
        };
    }

    /**
     * The deviation below which a share of all builds lies.
     *
     * @param share above 0 and below 1
     */
    double quantile(double share) {
        double minus = tolerance.minus();
        double plus = tolerance.plus();
        double exact = switch (tolerance.distribution()) {
            case UNIFORM -> -minus + share * (plus + minus);
            case NORMAL ->
                NormalDistribution.of(mean(), (plus + minus) / 2 / tolerance.sigmas())
                        .inverseCumulativeProbability(share);
            case TRIANGULAR -> TriangularDistribution.of(-minus, 0, plus).inverseCumulativeProbability(share);
        };
        return Math.rint(exact * STEPS) / STEPS;
    }

    /** Whether a deviation is within the tolerance. */
    boolean allows(double deviation) {
        return deviation >= -tolerance.minus() && deviation <= tolerance.plus();
    }

    /** The deviation at a share of the way from the drawn value to an end of the tolerance: -1 the lower end, 1 the upper. */
    double at(double share) {
        return share < 0 ? share * tolerance.minus() : share * tolerance.plus();
    }
}
