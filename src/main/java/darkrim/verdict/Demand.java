package darkrim.verdict;

import darkrim.layout.Requirement;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Optional;

/**
 * A requirement and the surfaces that it is about.
 *
 * @param requirement what is asked
 * @param surfaces the surfaces that its pattern selects, in the order of the scene
 * @param decided what was found where light has no part in it; otherwise empty
 */
public record Demand(Requirement requirement, List<Surface> surfaces, Optional<RequirementResult> decided) {
    /** One that light decides. */
    public Demand(Requirement requirement, List<Surface> surfaces) {
        this(requirement, surfaces, Optional.empty());
    }

    /** One that is decided already. */
    public static Demand decided(RequirementResult result) {
        return new Demand(result.requirement(), List.of(), Optional.of(result));
    }

    /** Copies the list. */
    public Demand {
        surfaces = List.copyOf(surfaces);
    }
}
