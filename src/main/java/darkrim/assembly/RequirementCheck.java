package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.MapSpec;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.AtMost;
import darkrim.layout.Requirement.Clearance;
import darkrim.layout.Requirement.NoDirect;
import darkrim.layout.Requirement.Per;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Checks that every requirement is about surfaces that exist and can be answered for them. */
final class RequirementCheck {
    /** A face that wire bonds stand on: the path of the die, what it is, the side. */
    private static final Pattern LEDGE = Pattern.compile("(.+)/(?:pads|ledge)/([+-][xy])");

    private static final List<String> EXPOSED_BOND_FACES = List.of("top", "inner", "outer", "end-1", "end-2");

    private RequirementCheck() {}

    static void check(Layout layout, SurfaceSelector selector, Set<String> mapped, Findings findings) {
        Map<Requirement, List<String>> dark = new LinkedHashMap<>();
        for (Requirement requirement : layout.requirements()) {
            List<String> selected =
                    selector.select("requirement " + requirement.name(), requirement.surfaces(), requirement.place());
            if (requirement.condition() instanceof AtMost limit
                    && limit.per() == Per.CELL
                    && !layout.maps().equals(MapSpec.UNREAD)) {
                requireMaps(requirement, selected, mapped, findings);
            }
            if (requirement.condition() instanceof Clearance clearance) {
                ClearanceCheck.check(requirement, clearance, selected, selector, findings);
            }
            if (requirement.condition() instanceof NoDirect) {
                dark.put(requirement, selected);
            }
        }
        Set<String> allDark = new HashSet<>();
        dark.values().forEach(allDark::addAll);
        dark.forEach((requirement, selected) -> {
            List<String> shaded = selected.stream()
                    .filter(name -> bondsMayHide(name, selector, allDark))
                    .toList();
            if (!shaded.isEmpty()) {
                findings.warning("bonds-shade-ledge", requirement.place(), shadedMessage(requirement, shaded));
            }
        });
    }

    private static void requireMaps(
            Requirement requirement, List<String> selected, Set<String> mapped, Findings findings) {
        List<String> without =
                selected.stream().filter(name -> !mapped.contains(name)).toList();
        if (!without.isEmpty()) {
            findings.error(
                    "no-map",
                    requirement.place(),
                    "requirement " + requirement.name() + " asks per cell, but " + listed(without)
                            + (without.size() == 1 ? " has" : " have")
                            + " no map: select rectangular surfaces under maps, or ask per surface");
        }
    }

    /**
     * Whether a face is a ledge or a row of pads whose wire bonds need not be dark. The solid that stands for the wires shades what it
     * stands on, real wires do not: a dark ledge then proves nothing.
     */
    private static boolean bondsMayHide(String face, SurfaceSelector selector, Set<String> dark) {
        Matcher ledge = LEDGE.matcher(face);
        if (!ledge.matches()) {
            return false;
        }
        String bonds = ledge.group(1) + "/bonds/" + ledge.group(2) + "/";
        return selector.has(bonds + "top")
                && !EXPOSED_BOND_FACES.stream().allMatch(part -> dark.contains(bonds + part));
    }

    private static String shadedMessage(Requirement requirement, List<String> shaded) {
        return "requirement " + requirement.name() + " wants " + listed(shaded)
                + " dark, but the wire bonds there are one opaque solid and shade it while real wires do not: also require"
                + " direct: none of the bonds";
    }

    private static String listed(List<String> names) {
        return names.get(0) + (names.size() == 1 ? "" : " and " + (names.size() - 1) + " more");
    }
}
