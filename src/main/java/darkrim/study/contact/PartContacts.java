package darkrim.study.contact;

import darkrim.assembly.Assembly;
import darkrim.assembly.Body;
import darkrim.diagnostic.Findings;
import darkrim.layout.form.Wording;
import darkrim.scene.Scene;
import darkrim.shadow.ProofSettings;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What is doubtful or wrong about how parts lie against each other: the warning {@code parts-overlap} where they run into one another, the
 * error {@code sheet-in-contact} where a sheet lies on a face. One finding for each two parts.
 */
public final class PartContacts {
    private final PlacedBodies bodies;
    private final Scene scene;
    private final Findings findings;

    private PartContacts(PlacedBodies bodies, Scene scene, Findings findings) {
        this.bodies = bodies;
        this.scene = scene;
        this.findings = findings;
    }

    /**
     * Looks at all parts.
     *
     * @param assembly the parts
     * @param scene the scene made of them
     * @param tree the tree over its facets
     * @param findings receives what is found
     * @param watch may ask to stop, which leaves out what was not looked at
     */
    public static void check(Assembly assembly, Scene scene, FacetTree tree, Findings findings, Watch watch) {
        PlacedBodies bodies = new PlacedBodies(assembly, scene);
        PartContacts contacts = new PartContacts(bodies, scene, findings);
        double gap = ProofSettings.DEFAULT.gapWithin(scene.bound());
        contacts.report(SheetContact.all(scene, tree, bodies, gap, watch), gap);
        contacts.reportOverlaps(new OverlapSearch(scene, tree, bodies, gap, watch).all());
    }

    private record Parts(String first, String second) {}

    private void reportOverlaps(List<Overlap> overlaps) {
        Map<Parts, List<Overlap>> byParts = new LinkedHashMap<>();
        for (Overlap overlap : overlaps) {
            Parts parts = new Parts(bodies.part(overlap.first()), bodies.part(overlap.second()));
            byParts.computeIfAbsent(parts, key -> new ArrayList<>()).add(overlap);
        }
        byParts.forEach((parts, all) -> {
            Overlap largest = all.get(0);
            for (Overlap overlap : all) {
                largest = overlap.size().norm() > largest.size().norm() ? overlap : largest;
            }
            Vector3D size = largest.size();
            String parties = parts.first.equals(parts.second)
                    ? "copies of part " + parts.first + " run into one another"
                    : "parts " + parts.first + " and " + parts.second + " run into one another";
            String bodyNames = bodies.body(largest.first()).name() + " and "
                    + bodies.body(largest.second()).name();
            findings.warning(
                    "parts-overlap",
                    bodies.body(largest.second()).place(),
                    parties + ": " + bodyNames + " at " + place(largest.at()) + ", over at least "
                            + String.format(Locale.ROOT, "%.3g x %.3g x %.3g mm", size.getX(), size.getY(), size.getZ())
                            + " along x, y and z" + others(all.size() - 1)
                            + "; what lies inside another part counts as dark: move or cut one of them");
        });
    }

    private void report(List<SheetContact> contacts, double gap) {
        Map<Parts, List<SheetContact>> byParts = new LinkedHashMap<>();
        for (SheetContact contact : contacts) {
            Parts parts = new Parts(bodies.part(contact.sheet()), bodies.part(contact.other()));
            byParts.computeIfAbsent(parts, key -> new ArrayList<>()).add(contact);
        }
        byParts.forEach((parts, all) -> {
            SheetContact first = all.get(0);
            Body sheet = bodies.body(first.sheet());
            String on = scene.surfaces().get(scene.frontSurface(first.facet())).name();
            // Twice the gap, so that rounding does not bring it back.
            String lift = BigDecimal.valueOf(2 * gap)
                    .round(new MathContext(1, RoundingMode.UP))
                    .stripTrailingZeros()
                    .toPlainString();
            findings.error(
                    "sheet-in-contact",
                    sheet.place(),
                    "the sheet " + sheet.name() + " lies on " + on + " at " + place(first.at())
                            + others(all.size() - 1)
                            + ": a sheet has no thickness and would cover nothing there; expected it at least " + lift
                            + " mm away, or a thin block in its place");
        });
    }

    private static String others(int count) {
        return count == 0 ? "" : count == 1 ? " (and one more such pair)" : " (and " + count + " more such pairs)";
    }

    /** To a ten-thousandth of a millimetre. */
    static String place(Vector3D at) {
        return Stream.of(at.getX(), at.getY(), at.getZ())
                .map(coordinate -> Wording.number(Math.rint(1e4 * coordinate) / 1e4 + 0.0))
                .collect(Collectors.joining(", ", "(", ") mm"));
    }
}
