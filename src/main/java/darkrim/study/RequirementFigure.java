package darkrim.study;

import darkrim.layout.Requirement;
import darkrim.verdict.Verdict;
import java.io.Serializable;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One requirement of one layout in numbers that can be drawn and compared: those of its worst surface.
 *
 * @param requirement name of the requirement
 * @param verdict what can be said of all its surfaces together
 * @param value relative irradiance, share of the pupil, or a distance in mm; NaN where no value is known
 * @param standardError standard error of the value; 0 where it is exact
 * @param lower what the value is at least, at the stated confidence; NaN where nothing is known
 * @param upper what the value is at most; NaN where nothing is known
 * @param limit what it must not exceed or, for a share of the pupil or a distance, not fall below
 * @param margin as {@link RequirementMargin} defines it, in mm or, of a limit, the limit less the value; NaN where it is not known
 * @param marginAtLeast whether the margin is only known to be no less
 * @param worst the surface, or cell of its map, that matters most
 * @param samples what is known of each surface or cell whose value is known, by its name, for comparison with another layout
 */
public record RequirementFigure(
        String requirement,
        Verdict verdict,
        double value,
        double standardError,
        double lower,
        double upper,
        double limit,
        double margin,
        boolean marginAtLeast,
        String worst,
        SortedMap<String, SurfaceValue> samples)
        implements Serializable {

    /** Copies the map. A sweep keeps the figures of each of its points: none has an empty map of its own. */
    public RequirementFigure {
        samples = samples.isEmpty()
                ? Collections.emptySortedMap()
                : Collections.unmodifiableSortedMap(new TreeMap<>(samples));
    }

    /** The same without what is known of single surfaces. */
    public RequirementFigure withoutSamples() {
        return new RequirementFigure(
                requirement,
                verdict,
                value,
                standardError,
                lower,
                upper,
                limit,
                margin,
                marginAtLeast,
                worst,
                Collections.emptySortedMap());
    }

    /** The limit of a condition; 0 where no light is allowed. */
    static double limit(Requirement.Condition condition) {
        if (condition instanceof Requirement.AtMost most) {
            return most.limit();
        }
        if (condition instanceof Requirement.Clearance clearance) {
            return clearance.atLeast();
        }
        return condition instanceof Requirement.PupilSeen seen ? seen.share() : 0;
    }

    /** The change of the value of the worst surface from another layout; not known where either value is not. */
    public Change changeFrom(RequirementFigure other) {
        SurfaceValue here = samples.get(worst);
        SurfaceValue there = other.samples.get(worst);
        return here == null || there == null ? Change.UNKNOWN : here.changeFrom(there);
    }
}
