package darkrim.study;

import java.io.Serializable;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The difference of a value between two layouts.
 *
 * @param value the difference; NaN where it is not known
 * @param standardError its own standard error; 0 where both values are exact, NaN where it is not known
 * @param freedoms degrees of freedom of the standard error; 0 where there is none
 */
public record Change(double value, double standardError, int freedoms) implements Serializable {
    /** Not known. */
    public static final Change UNKNOWN = new Change(Double.NaN, Double.NaN, 0);

    /** Whether it is known. */
    public boolean isKnown() {
        return !Double.isNaN(value);
    }

    /**
     * Whether there is a difference at all: by Student's t test on both sides; between exact values any difference is one.
     *
     * @param confidence of this one statement, such as 0.999
     */
    public boolean isSignificant(double confidence) {
        if (!isKnown() || Double.isNaN(standardError)) {
            return false;
        }
        if (standardError == 0) {
            return value != 0;
        }
        double most = TDistribution.of(freedoms).inverseSurvivalProbability((1 - confidence) / 2);
        return Math.abs(value) > most * standardError;
    }

    /** Probability that chance alone makes a difference as large: Student's t, both sides; 0 for a difference of exact values; NaN where not known. */
    public double chance() {
        if (!isKnown() || Double.isNaN(standardError)) {
            return Double.NaN;
        }
        if (value == 0) {
            return 1;
        }
        return standardError == 0
                ? 0
                : 2 * TDistribution.of(freedoms).survivalProbability(Math.abs(value) / standardError);
    }
}
