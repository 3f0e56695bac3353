package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Applies the patterns of a layout to its surfaces; a pattern that selects nothing becomes a finding. */
final class SurfaceSelector {
    /** Stars are tried in patterns up to this length, so that it stays one that can be read. */
    private static final int LONGEST_MENDED = 400;

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
            String nearest = ofCopies(pattern)
                    .or(() -> NearestPath.to(pattern, surfaces))
                    .map(path -> "the nearest is \"" + path + "\"")
                    .orElse("the layout has no surfaces");
            findings.error(
                    "matches-nothing", place, what + ": \"" + shortened(pattern) + "\" selects no surface; " + nearest);
        }
        return selected;
    }

    /**
     * A pattern for one part that has become several, which have numbers: with a star after each step that names such. Empty where that selects
     * nothing either.
     */
    private Optional<String> ofCopies(String pattern) {
        if (pattern.length() > LONGEST_MENDED) {
            return Optional.empty();
        }
        Set<String> copied = surfaces.stream()
                .flatMap(path -> Arrays.stream(path.split("/")))
                .filter(step -> step.indexOf('[') > 0)
                .map(step -> step.substring(0, step.indexOf('[')))
                .collect(Collectors.toSet());
        String wider = Arrays.stream(pattern.split("/", -1))
                .map(step -> copied.contains(step) ? step + "*" : step)
                .collect(Collectors.joining("/"));
        return wider.equals(pattern) || matching(wider).isEmpty() ? Optional.empty() : Optional.of(wider);
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
