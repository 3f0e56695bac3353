package darkrim.diagnostic;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Collects findings while input is read, so that all of them are shown at once. Not for use by several threads. */
public final class Findings {
    private final Set<Finding> collected = new LinkedHashSet<>();

    /** Adds an error. */
    public void error(String code, Place place, String message) {
        collected.add(Finding.error(code, place, message));
    }

    /** Adds a warning. */
    public void warning(String code, Place place, String message) {
        collected.add(Finding.warning(code, place, message));
    }

    /** Adds all of them. */
    public void addAll(List<Finding> more) {
        collected.addAll(more);
    }

    /** Whether an error was found. */
    public boolean hasErrors() {
        return collected.stream().anyMatch(finding -> finding.severity() == Finding.Severity.ERROR);
    }

    /** Everything found so far, sorted by place; equal findings once. */
    public List<Finding> sorted() {
        List<Finding> all = new ArrayList<>(collected);
        all.sort(Comparator.comparing(Finding::place));
        return List.copyOf(all);
    }

    /**
     * Ends the reading where it makes no sense to go on.
     *
     * @throws UnusableInput if an error was found
     */
    public void throwIfErrors() throws UnusableInput {
        if (hasErrors()) {
            throw new UnusableInput(sorted());
        }
    }
}
