package darkrim.view.work;

import darkrim.layout.Requirement;
import darkrim.verdict.Verdict;
import darkrim.view.parts.Stage;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A requirement in two layouts that stand side by side.
 *
 * @param name its name
 * @param before how it stands in the first
 * @param after how it stands in the second
 * @param alike whether both ask the same of surfaces of the same pattern; so too where one does not ask at all
 */
public record RequirementPair(String name, Standing before, Standing after, boolean alike) {
    /**
     * How a requirement stands in a layout.
     *
     * @param asked whether the layout has it
     * @param verdict its verdict; empty where there is none yet
     * @param value what was found of the surface that matters most, with its error; empty where there is none
     * @param margin least margin in words; empty where there is none
     */
    public record Standing(boolean asked, Optional<Verdict> verdict, String value, String margin) {}

    /** Whether the two differ in what can be seen: in the verdict once both are known, in being asked, or in what is asked. */
    public boolean isChanged() {
        boolean known = before.verdict().isPresent() && after.verdict().isPresent();
        return !alike
                || before.asked() != after.asked()
                || (known && !before.verdict().equals(after.verdict()));
    }

    /**
     * The requirements of both layouts in the order of the first, then those that only the second has. Nothing before both can be read: what is
     * asked is not known then.
     */
    public static List<RequirementPair> of(Content first, Content second) {
        if (first.stage().isEmpty() || second.stage().isEmpty()) {
            return List.of();
        }
        Map<String, Requirement> one = asked(first.stage().get());
        Map<String, Requirement> two = asked(second.stage().get());
        Set<String> names = new LinkedHashSet<>(one.keySet());
        names.addAll(two.keySet());
        return names.stream()
                .map(name -> new RequirementPair(
                        name,
                        standing(one, name, first.facts()),
                        standing(two, name, second.facts()),
                        isAlike(one.get(name), two.get(name))))
                .toList();
    }

    private static Standing standing(Map<String, Requirement> asked, String name, Optional<Facts> facts) {
        Optional<Facts.RequirementFact> fact = facts.stream()
                .flatMap(known -> known.requirements().stream())
                .filter(known -> known.name().equals(name))
                .findFirst();
        return new Standing(
                asked.containsKey(name),
                fact.map(Facts.RequirementFact::verdict),
                fact.map(Facts.RequirementFact::value).orElse(""),
                fact.map(Facts.RequirementFact::margin).orElse(""));
    }

    private static boolean isAlike(Requirement one, Requirement two) {
        return one == null
                || two == null
                || (one.surfaces().equals(two.surfaces()) && one.condition().equals(two.condition()));
    }

    private static Map<String, Requirement> asked(Stage stage) {
        Map<String, Requirement> asked = new LinkedHashMap<>();
        stage.layout().requirements().forEach(each -> asked.put(each.name(), each));
        return asked;
    }
}
