package darkrim.view.parts;

import darkrim.assembly.Assembly;
import darkrim.assembly.Body;
import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.scene.Surface;
import darkrim.study.NoWindow;
import darkrim.trace.FacetTree;
import darkrim.view.camera.Box;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A layout as it stands in space, ready to be drawn and picked. No light is known yet. Immutable.
 *
 * @param layout what the designer wrote
 * @param scene its facets and surfaces
 * @param tree the tree over the facets
 * @param box the box around all parts, without the pupil
 * @param edges the edges of every surface, by its number, six coordinates each, mm
 * @param solids the surfaces that enclose each solid, by number
 * @param names the name of each solid
 * @param warnings what deserves attention
 */
public record Stage(
        Layout layout,
        Scene scene,
        FacetTree tree,
        Box box,
        List<double[]> edges,
        List<int[]> solids,
        List<String> names,
        List<Finding> warnings) {
    /** Copies the lists. */
    public Stage {
        edges = List.copyOf(edges);
        solids = List.copyOf(solids);
        names = List.copyOf(names);
        warnings = List.copyOf(warnings);
    }

    /**
     * Puts a layout into space.
     *
     * @param layout the layout
     * @param findings what is known to be wrong with it; what its parts show is added
     * @throws UnusableInput with everything that is wrong with it
     */
    public static Stage of(Layout layout, Findings findings) throws UnusableInput {
        NoWindow.require(layout, "view");
        Assembly assembly = Assembly.of(layout, findings);
        findings.throwIfErrors();
        Scene scene = SceneFactory.of(layout, assembly);
        double[] corners = scene.copyCorners();
        Map<String, Integer> indices = new HashMap<>();
        scene.surfaces().forEach(surface -> indices.put(surface.name(), surface.index()));
        List<int[]> solids = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (Body body : assembly.bodies()) {
            if (body.solid()) {
                solids.add(body.faces().stream()
                        .mapToInt(face -> indices.get(face.name()))
                        .toArray());
                names.add(body.name());
            }
        }
        return new Stage(
                layout,
                scene,
                FacetTree.build(corners, scene.copyPlanes(), scene.bound()),
                Box.around(corners),
                FeatureEdges.of(scene),
                solids,
                names,
                findings.sorted());
    }

    /** The box around some surfaces; around everything if there are none. */
    public Box boxAround(List<Surface> surfaces) {
        Box around = null;
        for (Surface surface : surfaces) {
            for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                for (int k = 0; k < 3; k++) {
                    around = around == null
                            ? new Box(scene.corner(f, k), scene.corner(f, k))
                            : around.with(scene.corner(f, k));
                }
            }
        }
        return around == null ? box : around;
    }
}
