package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.study.irradiance.PlacedLayout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is wrong with the options of a command that writes files, gathered and said all at once beside what is wrong with the layout. */
final class Problems {
    private final Surroundings surroundings;
    private final String outcome;
    private final List<String> all = new ArrayList<>();

    /**
     * @param surroundings where they are said
     * @param outcome what comes of it, such as {@code nothing was drawn}
     */
    Problems(Surroundings surroundings, String outcome) {
        this.surroundings = surroundings;
        this.outcome = outcome;
    }

    void add(String problem) {
        all.add(problem);
    }

    void addAll(List<String> problems) {
        all.addAll(problems);
    }

    /** Adds one, if there is one. */
    void add(Optional<String> problem) {
        problem.ifPresent(all::add);
    }

    /** Whether there are any; says them. */
    boolean refuse() {
        all.forEach(problem -> surroundings.errors().println("darkrim: " + problem + "; " + outcome + "."));
        return !all.isEmpty();
    }

    /**
     * The layout with its surfaces.
     *
     * @throws UnusableInput if it cannot be used; what is wrong with the options is said then
     */
    PlacedLayout placed(LayoutOptions options) throws UnusableInput {
        try {
            return PlacedLayout.of(options.layout(), options.effort());
        } catch (UnusableInput unusable) {
            refuse();
            throw unusable;
        }
    }
}
