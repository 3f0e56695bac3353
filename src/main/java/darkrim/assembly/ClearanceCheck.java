package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.Clearance;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Checks that the two sides of a clearance can be told apart, and that one of them is what is brought in. */
final class ClearanceCheck {
    private ClearanceCheck() {}

    /**
     * Checks one.
     *
     * @param requirement the requirement
     * @param clearance what it asks
     * @param first surfaces of the one side
     * @param selector selects those of the other
     * @param findings receives what is wrong
     */
    static void check(
            Requirement requirement,
            Clearance clearance,
            List<String> first,
            SurfaceSelector selector,
            Findings findings) {
        String what = "requirement " + requirement.name();
        List<String> second = selector.select(what, clearance.other(), requirement.place());
        Set<String> shared = new HashSet<>(second);
        first.stream()
                .filter(shared::contains)
                .findFirst()
                .ifPresent(name -> findings.error(
                        "clearance-sides",
                        requirement.place(),
                        what + ": both sides of the clearance have " + name + ", expected surfaces on one side only"));
        if (clearance.lowering().isPresent() && !first.isEmpty() && !second.isEmpty()) {
            String pattern = clearance.lowering().get().moved();
            Set<String> moved = new HashSet<>(selector.select(what, pattern, requirement.place()));
            if (!moved.isEmpty() && !(oneMoves(first, second, moved) || oneMoves(second, first, moved))) {
                findings.error(
                        "clearance-sides",
                        requirement.place(),
                        what + ": \"" + pattern + "\" brings in " + part(first, moved) + " the one side and "
                                + part(second, moved) + " the other, expected all of one and none of the other");
            }
        }
    }

    private static boolean oneMoves(List<String> one, List<String> other, Set<String> moved) {
        return moved.containsAll(one) && other.stream().noneMatch(moved::contains);
    }

    private static String part(List<String> side, Set<String> moved) {
        return moved.containsAll(side) ? "all of" : side.stream().anyMatch(moved::contains) ? "a part of" : "none of";
    }
}
