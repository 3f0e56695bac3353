package darkrim.study;

import darkrim.assembly.Assembly;
import darkrim.assembly.AssemblyMemory;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.Requirement;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.scene.Surface;
import darkrim.study.clearance.Clearances;
import darkrim.study.contact.MeshContacts;
import darkrim.study.contact.PartContacts;
import darkrim.trace.FacetTree;
import darkrim.verdict.Demand;
import darkrim.verdict.Watch;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;

/**
 * A layout whose parts stand where they can stand: what proofs and sampling need of it.
 *
 * @param layout what the designer wrote
 * @param assembly its parts, placed
 * @param scene what light meets
 * @param tree the tree over the facets of the scene
 * @param demands each requirement with the surfaces that it is about, in the order of the layout; clearances are decided
 */
public record PlacedScene(Layout layout, Assembly assembly, Scene scene, FacetTree tree, List<Demand> demands) {
    /** Copies the list. */
    public PlacedScene {
        demands = List.copyOf(demands);
    }

    /**
     * Places the parts of a layout file.
     *
     * @param file the file
     * @param effort in which shape, cold or warm
     * @param findings what is found wrong with it is added
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the file
     */
    public static PlacedScene of(Path file, Effort effort, Findings findings, Watch watch) throws UnusableInput {
        return of(effort.shaped(Check.readable(file, findings)), findings, watch);
    }

    /**
     * Places the parts of a layout.
     *
     * @param layout the layout
     * @param findings what is known to be wrong with it; what its parts show is added
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the layout
     */
    public static PlacedScene of(Layout layout, Findings findings, Watch watch) throws UnusableInput {
        return of(layout, new AssemblyMemory(), findings, watch);
    }

    /**
     * The same, taking from the last layout what holds for this one.
     *
     * @param layout the layout
     * @param memory what is known of the last layout; of this one afterwards
     * @param findings what is known to be wrong with it; what its parts show is added
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the layout
     */
    static PlacedScene of(Layout layout, AssemblyMemory memory, Findings findings, Watch watch) throws UnusableInput {
        Assembly assembly = Assembly.of(layout, memory, findings);
        findings.throwIfErrors();
        Scene scene = SceneFactory.of(layout, assembly);
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        PartContacts.check(assembly, scene, tree, findings, watch);
        MeshContacts.check(layout, assembly, scene, tree, findings, watch);
        findings.throwIfErrors();
        return new PlacedScene(layout, assembly, scene, tree, demands(layout, assembly, scene, memory));
    }

    private static List<Demand> demands(Layout layout, Assembly assembly, Scene scene, AssemblyMemory memory) {
        Clearances clearances = new Clearances(layout, assembly, scene, memory);
        List<String> names = scene.surfaces().stream().map(Surface::name).toList();
        return layout.requirements().stream()
                .map(requirement -> {
                    if (requirement.condition() instanceof Requirement.Clearance) {
                        return Demand.decided(clearances.of(requirement));
                    }
                    Set<String> selected = Set.copyOf(memory.selected(requirement.surfaces(), names));
                    List<Surface> surfaces = scene.surfaces().stream()
                            .filter(surface -> selected.contains(surface.name()))
                            .toList();
                    return new Demand(requirement, surfaces);
                })
                .toList();
    }
}
