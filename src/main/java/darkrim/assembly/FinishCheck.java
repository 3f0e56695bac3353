package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import darkrim.layout.Requirement;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/** Warns of parts without a finish where once-reflected light is asked for: forgotten finishes make it vanish. */
final class FinishCheck {
    private FinishCheck() {}

    /**
     * Warns once for each part; not where there are errors, of which one may be a key {@code finish} that is misspelt.
     *
     * @param layout the layout
     * @param surfacesOf names of the surfaces of a part, by its name
     * @param ruled surfaces that get their finish from a rule
     * @param findings what is known to be wrong; receives the warnings
     */
    static void check(Layout layout, Function<String, List<String>> surfacesOf, Set<String> ruled, Findings findings) {
        if (findings.hasErrors() || layout.requirements().stream().noneMatch(FinishCheck::isAboutReflectedLight)) {
            return;
        }
        for (Part part : layout.parts()) {
            List<String> without = part.finish().isPresent()
                    ? List.of()
                    : surfacesOf.apply(part.name()).stream()
                            .filter(name -> !ruled.contains(name))
                            .toList();
            if (!without.isEmpty()) {
                findings.warning("no-finish", part.place(), message(part, without));
            }
        }
    }

    private static boolean isAboutReflectedLight(Requirement requirement) {
        return requirement.condition() instanceof Requirement.AtMost most
                && most.light() == Requirement.LightClass.ONCE_REFLECTED;
    }

    private static String message(Part part, List<String> without) {
        String others = without.size() == 1 ? "" : " and " + (without.size() - 1) + " more";
        return "part '" + part.name() + "' states no finish, so " + without.get(0) + others
                + " reflect" + (without.size() == 1 ? "s" : "")
                + " nothing, yet once-reflected light is asked for, expected a"
                + " finish, or 'finish: " + Part.NO_FINISH + "' where nothing is meant";
    }
}
