package darkrim.layout.form;

import com.ezylang.evalex.parser.ASTNode;
import darkrim.diagnostic.Findings;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Follows the names in formulas: unknown ones, rings, and the order in which dimensions can be worked out. */
final class FormulaNames {
    private final Map<String, Amount> dimensions;
    private final Set<String> broken;
    private final Findings findings;
    private final Set<Amount> sound = new HashSet<>();
    private final Set<String> unresolved = new LinkedHashSet<>();
    private final Set<String> order = new LinkedHashSet<>();

    /**
     * @param dimensions the named dimensions
     * @param broken names that are defined but could not be read
     * @param amounts all numbers of the file
     * @param findings receives unknown names, refused exponents and rings
     */
    FormulaNames(Map<String, Amount> dimensions, Set<String> broken, List<Amount> amounts, Findings findings) {
        this.dimensions = dimensions;
        this.broken = broken;
        this.findings = findings;
        unresolved.addAll(broken);
        amounts.stream().filter(this::check).forEach(sound::add);
        dimensions.forEach((name, amount) -> {
            if (!sound.contains(amount)) {
                unresolved.add(name);
            }
        });
        Set<String> visited = new HashSet<>();
        for (String name : dimensions.keySet()) {
            follow(name, new ArrayList<>(), visited);
        }
    }

    /** Whether all names of a number are known, whether or not they have values. */
    boolean isSound(Amount amount) {
        return sound.contains(amount);
    }

    /** Names without a value, for a reason that has been reported. */
    Set<String> unresolved() {
        return unresolved;
    }

    /** The dimensions that can be worked out, each after those that it uses. */
    List<String> order() {
        return order.stream().filter(name -> !unresolved.contains(name)).toList();
    }

    private boolean check(Amount amount) {
        if (!(amount.written() instanceof Formula formula)) {
            return true;
        }
        if (hasRefusedName(formula)) {
            return false;
        }
        boolean known = true;
        for (ASTNode use : formula.variables()) {
            String name = use.getToken().getValue();
            if (!dimensions.containsKey(name) && !broken.contains(name)) {
                findings.error(
                        "unknown-name",
                        formula.placeOf(use),
                        "unknown dimension '" + Wording.shortened(name) + "', "
                                + Wording.suggestion(name, dimensions.keySet()));
                known = false;
            }
        }
        return Exponent.check(formula, findings) && known;
    }

    /** Whether it uses a dimension whose name is no name, such as {@code lid-height}, which has been reported: it is read as a difference. */
    private boolean hasRefusedName(Formula formula) {
        return broken.stream()
                .anyMatch(name -> Letters.DIMENSION.problem(name).isPresent()
                        && formula.text().contains(name));
    }

    private void follow(String name, List<String> path, Set<String> visited) {
        int start = path.indexOf(name);
        if (start >= 0) {
            List<String> ring = path.subList(start, path.size());
            unresolved.addAll(ring);
            String first = dimensions.keySet().stream()
                    .filter(ring::contains)
                    .findFirst()
                    .orElse(name);
            List<String> fromFirst = new ArrayList<>(ring.subList(ring.indexOf(first), ring.size()));
            fromFirst.addAll(ring.subList(0, ring.indexOf(first)));
            findings.error(
                    "circular",
                    dimensions.get(first).place(),
                    "circular formulas: " + String.join(" -> ", fromFirst) + " -> " + first
                            + ", expected one of them to be a number");
            return;
        }
        Amount amount = dimensions.get(name);
        if (amount == null || !visited.add(name)) {
            return;
        }
        if (amount.written() instanceof Formula formula) {
            path.add(name);
            for (String used : formula.names()) {
                follow(used, path, visited);
                if (unresolved.contains(used)) {
                    unresolved.add(name);
                }
            }
            path.remove(path.size() - 1);
        }
        order.add(name);
    }
}
