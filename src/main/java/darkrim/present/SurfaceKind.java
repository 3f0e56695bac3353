package darkrim.present;

import darkrim.verdict.SurfaceResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Surfaces that differ only in the numbers and the side in their names, such as the eight lit edges of four dies.
 *
 * @param strongest the first of them in the order they were given
 * @param count how many there are
 */
record SurfaceKind(SurfaceResult strongest, int count) {
    private static final Pattern NUMBER = Pattern.compile("\\[\\d+,\\d+]");
    private static final Pattern SIDE = Pattern.compile("/([-+][xyz]|\\d+)(?=/|$)");
    private static final Pattern END = Pattern.compile("-\\d+$");

    /** The kinds of a list, in the order of their first members. */
    static List<SurfaceKind> of(List<SurfaceResult> ordered) {
        Map<String, List<SurfaceResult>> kinds = new LinkedHashMap<>();
        for (SurfaceResult each : ordered) {
            kinds.computeIfAbsent(kind(each.surface().name()), name -> new ArrayList<>())
                    .add(each);
        }
        return kinds.values().stream()
                .map(members -> new SurfaceKind(members.get(0), members.size()))
                .toList();
    }

    /** The name without numbers in brackets and without sides. */
    static String kind(String name) {
        String plain = SIDE.matcher(NUMBER.matcher(name).replaceAll("")).replaceAll("");
        return END.matcher(plain).replaceAll("");
    }
}
