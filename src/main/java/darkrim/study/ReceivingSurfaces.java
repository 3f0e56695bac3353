package darkrim.study;

import darkrim.assembly.Selection;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.List;

/** The surfaces on which a study counts light. */
public final class ReceivingSurfaces {
    private ReceivingSurfaces() {}

    /**
     * Those that a pattern selects, in the order of the scene; at least one.
     *
     * @param pattern what option --onto says, such as {@code **}{@code /active}
     * @throws UnusableStudy if the pattern cannot be read or selects none
     */
    public static List<Surface> of(Scene scene, String pattern) throws UnusableStudy {
        Selection selection;
        try {
            selection = Selection.of(pattern);
        } catch (IllegalArgumentException unreadable) {
            throw new UnusableStudy("--onto '" + pattern + "': " + unreadable.getMessage());
        }
        List<Surface> receivers = scene.surfaces().stream()
                .filter(surface -> selection.selects(surface.name()))
                .toList();
        if (receivers.isEmpty()) {
            throw new UnusableStudy("--onto '" + pattern
                    + "' selects no surface, expected a pattern such as 'mosaic/**/active'; the layout has '"
                    + scene.surfaces().get(0).name() + "' and "
                    + (scene.surfaces().size() - 1) + " other surfaces");
        }
        return receivers;
    }
}
