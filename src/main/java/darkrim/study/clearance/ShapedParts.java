package darkrim.study.clearance;

import darkrim.assembly.Assembly;
import darkrim.assembly.AssemblyMemory;
import darkrim.assembly.PartName;
import darkrim.assembly.Selection;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.ThermalShape;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.scene.Surface;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The parts of a layout in one of its shapes.
 *
 * @param shape which one
 * @param assembly the parts
 * @param scene their facets
 * @param coatings thickness of the coating by name of the part, mm
 */
record ShapedParts(ThermalShape shape, Assembly assembly, Scene scene, Map<String, Double> coatings) {
    /** Those that were put together already. */
    static ShapedParts of(Layout layout, Assembly assembly, Scene scene) {
        ThermalShape shape =
                layout.cooldown().isPresent() ? layout.cooldown().get().shape() : ThermalShape.WARM;
        Map<String, Double> coatings = new HashMap<>();
        layout.parts().forEach(part -> coatings.put(part.name(), part.coating()));
        return new ShapedParts(shape, assembly, scene, coatings);
    }

    /** Those of a layout of which another shape was put together without an error. */
    static ShapedParts of(Layout layout, AssemblyMemory memory) {
        Assembly assembly = Assembly.of(layout.partsOnly(), memory, new Findings());
        return of(layout, assembly, SceneFactory.of(layout.partsOnly(), assembly));
    }

    /** The surfaces that a pattern selects; of a sheet one of its two sides, which have the same facets. */
    List<Surface> select(String pattern) {
        Selection selection = Selection.of(pattern);
        List<Surface> selected = scene.surfaces().stream()
                .filter(surface -> selection.selects(surface.name()))
                .toList();
        return selected.stream()
                .filter(surface -> !surface.back()
                        || selected.stream()
                                .noneMatch(front -> !front.back() && front.firstFacet() == surface.firstFacet()))
                .toList();
    }

    /** By how much a surface may reach farther out than its facets, mm: its coating, and what a round part exceeds its polygon by. */
    double beyondFacets(Surface surface) {
        String part = PartName.of(surface.name());
        return coatings.getOrDefault(part, 0.0) + assembly.chordErrorOf(part);
    }
}
