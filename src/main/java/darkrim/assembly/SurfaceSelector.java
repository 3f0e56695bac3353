package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.util.Collections;
import java.util.List;
import java.util.Set;

/** Applies the patterns of a layout to its surfaces; a pattern that selects nothing becomes a finding. */
final class SurfaceSelector {
    private final AssemblyMemory memory;
    private final List<String> surfaces;
    private final Set<String> names;
    private final boolean complete;
    private final Findings findings;

    /**
     * @param memory what is known of the last layout
     * @param surfaces names of all surfaces
     * @param complete whether no part is missing: a pattern that selects nothing may otherwise mean one that is
     * @param findings receives what is wrong
     */
    SurfaceSelector(AssemblyMemory memory, Set<String> surfaces, boolean complete, Findings findings) {
        this.memory = memory;
        this.surfaces = List.copyOf(surfaces);
        this.names = Collections.unmodifiableSet(surfaces);
        this.complete = complete;
        this.findings = findings;
    }

    /**
     * The surfaces that a pattern selects; a finding if there are none.
     *
     * @param what what the pattern belongs to, the beginning of the message
     */
    List<String> select(String what, String pattern, Place place) {
        List<String> selected;
        try {
            selected = matching(pattern);
        } catch (IllegalArgumentException problem) {
            findings.error(
                    "bad-pattern", place, what + ": pattern \"" + shortened(pattern) + "\": " + problem.getMessage());
            return List.of();
        }
        if (selected.isEmpty() && complete) {
            String nearest = NearestPath.to(pattern, surfaces)
                    .map(path -> "the nearest is \"" + path + "\"")
                    .orElse("the layout has no surfaces");
            findings.error(
                    "matches-nothing", place, what + ": \"" + shortened(pattern) + "\" selects no surface; " + nearest);
        }
        return selected;
    }

    /**
     * The surfaces that a pattern selects.
     *
     * @throws IllegalArgumentException if the pattern cannot be read
     */
    List<String> matching(String pattern) {
        return memory.selected(pattern, surfaces);
    }

    /** Whether there is a surface of this name. */
    boolean has(String name) {
        return names.contains(name);
    }

    private static String shortened(String pattern) {
        return pattern.length() <= 80 ? pattern : pattern.substring(0, 77) + "...";
    }
}
