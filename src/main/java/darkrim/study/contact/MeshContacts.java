package darkrim.study.contact;

import darkrim.assembly.Assembly;
import darkrim.assembly.Body;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import darkrim.layout.Shape;
import darkrim.layout.form.Wording;
import darkrim.scene.Scene;
import darkrim.shadow.ProofSettings;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import java.util.HashSet;
import java.util.Set;

/**
 * What is doubtful about how meshes lie: the warning {@code mesh-self-crossing} where one runs through itself, {@code narrow-gap} where it
 * leaves a narrower gap to another part than was stated.
 */
public final class MeshContacts {
    private MeshContacts() {}

    /**
     * Looks at all meshes.
     *
     * @param layout the layout
     * @param assembly its parts
     * @param scene the scene made of them
     * @param tree the tree over its facets
     * @param findings receives what is found
     * @param watch may ask to stop, which leaves out what was not looked at
     */
    public static void check(
            Layout layout, Assembly assembly, Scene scene, FacetTree tree, Findings findings, Watch watch) {
        if (assembly.meshes().isEmpty()) {
            return;
        }
        PlacedBodies bodies = new PlacedBodies(assembly, scene);
        double tolerance = ProofSettings.DEFAULT.gapWithin(scene.bound());
        Set<String> crossed = new HashSet<>();
        // What is told of two bodies by the one needs no telling by the other.
        Set<Set<Integer>> told = new HashSet<>();
        for (Part part : layout.parts()) {
            if (part.shape() instanceof Shape.Mesh mesh) {
                for (int b = 0; b < bodies.count(); b++) {
                    if (bodies.part(b).equals(part.name())) {
                        // Copies cross themselves as the first does.
                        if (crossed.add(part.name() + bodies.body(b).solid())) {
                            selfCrossing(part, SelfCrossing.of(scene, tree, bodies, b, tolerance, watch), findings);
                        }
                        int body = b;
                        mesh.leastGap()
                                .ifPresent(width ->
                                        NarrowGap.of(scene, tree, bodies, body, tolerance, width, watch).stream()
                                                .filter(gap -> told.add(Set.of(gap.first(), gap.second())))
                                                .forEach(gap -> narrow(part, bodies, gap, width, findings)));
                    }
                }
            }
        }
    }

    private static void selfCrossing(Part part, SelfCrossing found, Findings findings) {
        if (found.count() > 0) {
            findings.warning(
                    "mesh-self-crossing",
                    part.place(),
                    "mesh of part " + part.name() + ": " + (found.count() == SelfCrossing.MOST ? "at least " : "")
                            + found.count() + (found.count() == 1 ? " pair" : " pairs")
                            + " of facets run through each other, the longest crossing of "
                            + Wording.number(found.length()) + " mm at " + PartContacts.place(found.at())
                            + ": what lies inside counts as dark, expected facets that meet along edges only");
        }
    }

    private static void narrow(Part part, PlacedBodies bodies, NarrowGap gap, double width, Findings findings) {
        Body other = bodies.body(gap.second());
        findings.warning(
                "narrow-gap",
                part.place(),
                "parts " + bodies.body(gap.first()).name() + " and " + other.name() + " leave a gap of "
                        + Wording.number(gap.width()) + " mm at " + PartContacts.place(gap.at())
                        + ", narrower than 'least_gap' of " + Wording.number(width)
                        + " mm: light may leak there, expected it closed, or a smaller 'least_gap' where it is meant");
    }
}
