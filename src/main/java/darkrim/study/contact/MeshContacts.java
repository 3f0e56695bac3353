package darkrim.study.contact;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import darkrim.layout.Shape;
import darkrim.layout.form.Wording;
import darkrim.scene.Scene;
import darkrim.shadow.ProofSettings;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What is doubtful about how meshes lie: the warning {@code mesh-self-crossing} where one runs through itself, {@code narrow-gap} where it
 * leaves a narrower gap to another part than was stated.
 */
public final class MeshContacts {
    /**
     * A gap that a part does not want.
     *
     * @param part the part
     * @param least its least gap, mm
     * @param gap the gap, seen from a body of the part
     */
    private record Unwanted(Part part, double least, NarrowGap gap) {}

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
        // By the two bodies: told once, with what either part asks for.
        Map<Set<Integer>, List<Unwanted>> gaps = new LinkedHashMap<>();
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
                                .ifPresent(width -> NarrowGap.of(scene, tree, bodies, body, tolerance, width, watch)
                                        .forEach(gap -> gaps.computeIfAbsent(
                                                        Set.of(gap.first(), gap.second()), key -> new ArrayList<>())
                                                .add(new Unwanted(part, width, gap))));
                    }
                }
            }
        }
        gaps.values().forEach(unwanted -> narrow(unwanted, bodies, findings));
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

    /** Each part that asks for more is named, so that all there is to mend is said at once. */
    private static void narrow(List<Unwanted> unwanted, PlacedBodies bodies, Findings findings) {
        Unwanted first = unwanted.get(0);
        NarrowGap narrowest = unwanted.stream()
                .map(Unwanted::gap)
                .min(Comparator.comparingDouble(NarrowGap::width))
                .orElseThrow();
        String asked = unwanted.stream()
                .map(each -> Wording.number(each.least()) + " mm of part "
                        + each.part().name())
                .distinct()
                .collect(Collectors.joining(" and of "));
        findings.warning(
                "narrow-gap",
                first.part().place(),
                "parts " + bodies.body(first.gap().first()).name() + " and "
                        + bodies.body(first.gap().second()).name() + " leave a gap of "
                        + Wording.number(narrowest.width()) + " mm at " + PartContacts.place(narrowest.at())
                        + ", narrower than 'least_gap' of " + asked
                        + ": light may leak there, expected it closed, or a smaller 'least_gap' where it is meant");
    }
}
