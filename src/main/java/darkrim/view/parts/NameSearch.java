package darkrim.view.parts;

import darkrim.assembly.Selection;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/** Finds surfaces by what someone types: words that all occur in the path, or a pattern as in a layout file. */
public final class NameSearch {
    private NameSearch() {}

    /**
     * The surfaces that are meant.
     *
     * @param typed what was typed; nothing means every surface
     * @param names names of all surfaces, by number
     * @return their numbers
     */
    public static List<Integer> find(String typed, List<String> names) {
        Predicate<String> meant = meant(typed.strip());
        List<Integer> found = new ArrayList<>();
        for (int number = 0; number < names.size(); number++) {
            if (meant.test(names.get(number))) {
                found.add(number);
            }
        }
        return found;
    }

    private static Predicate<String> meant(String typed) {
        if (typed.contains("*") || typed.contains("{") || typed.contains("?")) {
            try {
                Selection pattern = Selection.of(typed);
                return pattern::selects;
            } catch (IllegalArgumentException notYetWhole) {
                // While a pattern is being typed its braces do not match: taken for words.
            }
        }
        List<String> words = List.of(typed.toLowerCase(Locale.ROOT).split("\\s+"));
        return name -> words.stream().allMatch(name.toLowerCase(Locale.ROOT)::contains);
    }
}
