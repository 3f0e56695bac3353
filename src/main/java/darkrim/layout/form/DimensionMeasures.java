package darkrim.layout.form;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * What the named dimensions measure, as far as it is known: by their unit, by their formula, or else by their first
 * use.
 */
final class DimensionMeasures {
    /** Where it became known, and whether it was declared there or only used so. */
    private record Source(Measure measure, Place place, boolean declared) {}

    private final Map<String, Source> known = new HashMap<>();
    private final Set<String> usable;

    /**
     * @param usable names of the dimensions that have a value; of others nothing is asked
     */
    DimensionMeasures(Set<String> usable) {
        this.usable = new HashSet<>(usable);
    }

    /** How many are known. */
    int count() {
        return known.size();
    }

    Inferred of(String name) {
        Source source = known.get(name);
        if (source != null) {
            return new Inferred.Known(source.measure());
        }
        return usable.contains(name) ? Inferred.OPEN : Inferred.ANYTHING;
    }

    /** Says what a dimension measures, by its unit or its formula. */
    void declare(String name, Measure measure, Place place) {
        known.putIfAbsent(name, new Source(measure, place, true));
    }

    /** Asks nothing more of a dimension that has an error of its own. */
    void forget(String name) {
        known.remove(name);
        usable.remove(name);
    }

    /** Asks that a dimension measures this: the first use decides where nothing else does. */
    void demand(String name, Measure wanted, Place place, Findings findings) {
        if (!usable.contains(name)) {
            return;
        }
        if (!known.containsKey(name) && !wanted.isOfADimension()) {
            findings.error(
                    "measure",
                    place,
                    "'" + name + "' would have to be " + wanted
                            + " here, expected a use as a length, an angle or a plain number");
            return;
        }
        Source source = known.putIfAbsent(name, new Source(wanted, place, false));
        if (source == null || source.measure().equals(wanted)) {
            return;
        }
        String where = " at line " + source.place().line() + ", column "
                + source.place().column();
        findings.error(
                "measure",
                place,
                "'" + name + "' " + (source.declared() ? "is " : "is used as ") + source.measure() + where
                        + ", expected " + wanted + " here");
    }
}
