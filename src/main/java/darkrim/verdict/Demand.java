package darkrim.verdict;

import darkrim.layout.Requirement;
import darkrim.scene.Surface;
import java.util.List;

/**
 * A requirement and the surfaces that it is about.
 *
 * @param requirement what is asked
 * @param surfaces the surfaces that its pattern selects, in the order of the scene
 */
public record Demand(Requirement requirement, List<Surface> surfaces) {
    /** Copies the list. */
    public Demand {
        surfaces = List.copyOf(surfaces);
    }
}
