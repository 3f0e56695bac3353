package darkrim.assembly;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the surface, or the beginning of a path, that a pattern which matches nothing most likely meant: the one that the pattern selects
 * after the fewest changed, added or removed characters. Stars and braces match any text at no cost. Edit distance by dynamic programming,
 * Wagner and Fischer, J. ACM 21, 1974.
 */
final class NearestPath {
    /** What follows in a longer pattern is left out, to bound the time for a suggestion. */
    private static final int LONGEST = 100;

    private NearestPath() {}

    /** The nearest of some paths and their beginnings; of equally near ones the first. Empty if there are no paths. */
    static Optional<String> to(String pattern, Collection<String> paths) {
        Set<String> candidates = new LinkedHashSet<>();
        for (String path : paths) {
            for (int slash = path.indexOf('/'); slash >= 0; slash = path.indexOf('/', slash + 1)) {
                candidates.add(path.substring(0, slash));
            }
            candidates.add(path);
        }
        String head = pattern.length() <= LONGEST ? pattern : pattern.substring(0, LONGEST);
        String signs = head.replaceAll("\\{[^{}]*\\}", "*");
        String nearest = null;
        int fewest = Integer.MAX_VALUE;
        for (String candidate : candidates) {
            int edits = edits(signs, candidate);
            if (edits < fewest) {
                fewest = edits;
                nearest = candidate;
            }
        }
        return Optional.ofNullable(nearest);
    }

    /** Row by row over the pattern: the cost of matching the pattern so far with each beginning of the path. */
    private static int edits(String pattern, String path) {
        int[] row = new int[path.length() + 1];
        for (int j = 0; j <= path.length(); j++) {
            row[j] = j;
        }
        for (int i = 0; i < pattern.length(); i++) {
            char sign = pattern.charAt(i);
            boolean star = sign == '*';
            int diagonal = row[0];
            row[0] += star ? 0 : 1;
            for (int j = 1; j <= path.length(); j++) {
                int above = row[j];
                boolean same = sign == '?' || sign == path.charAt(j - 1);
                row[j] = star
                        ? Math.min(above, row[j - 1])
                        : Math.min(diagonal + (same ? 0 : 1), Math.min(above, row[j - 1]) + 1);
                diagonal = above;
            }
        }
        return row[path.length()];
    }
}
