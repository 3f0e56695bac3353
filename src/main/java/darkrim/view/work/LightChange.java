package darkrim.view.work;

import darkrim.present.Figures;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The light of one class on one face in two layouts. A change counts only if chance alone would hardly make one as large on any of the faces that
 * are compared.
 *
 * @param before in the first layout
 * @param after in the second
 * @param compared how many faces are compared
 */
public record LightChange(Reading before, Reading after, int compared) {
    /** Probability that chance alone makes any face count as changed (Bonferroni's correction), if errors are normal and independent. */
    static final double RISK = 1e-3;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /** What can be said of it. */
    public enum Kind {
        /** A value is missing. */
        NOT_KNOWN,
        /** No difference, or none beyond the errors. */
        NO_CHANGE_SEEN,
        /** Less in the second layout. */
        LESS,
        /** More in the second layout. */
        MORE
    }

    /** The second value less the first; NaN where one is missing. */
    public double difference() {
        return after.value() - before.value();
    }

    /**
     * Standard error of the difference. A value of 0 may be one of which no sample met any light; it is taken to be as uncertain as the other
     * value.
     */
    public double error() {
        double one = before.value() == 0 ? Math.max(before.error(), after.error()) : before.error();
        double two = after.value() == 0 ? Math.max(before.error(), after.error()) : after.error();
        return Math.sqrt(one * one + two * two);
    }

    /** The second value over the first; infinite from none to some, NaN where one is missing or both are none. */
    public double ratio() {
        return after.value() / before.value();
    }

    /** What can be said of it. */
    public Kind kind() {
        double difference = difference();
        double error = error();
        if (Double.isNaN(difference) || !Double.isFinite(error)) {
            return Kind.NOT_KNOWN;
        }
        double size = Math.abs(difference);
        boolean seen =
                error == 0 ? size > 0 : 2 * NORMAL.survivalProbability(size / error) * Math.max(1, compared) <= RISK;
        return seen ? (difference > 0 ? Kind.MORE : Kind.LESS) : Kind.NO_CHANGE_SEEN;
    }

    /** In letters. */
    public String words() {
        return switch (kind()) {
            case NOT_KNOWN -> "not known";
            case NO_CHANGE_SEEN -> error() == 0 ? "none" : "none beyond the errors";
            case LESS -> "less by " + size();
            case MORE -> "more by " + size();
        };
    }

    private String size() {
        double size = Math.abs(difference());
        String figures = error() == 0 ? Figures.three(size) : Figures.withError(size, error());
        return ratio() > 0 && Double.isFinite(ratio())
                ? figures + ", to " + Figures.three(ratio()) + " times"
                : figures;
    }
}
