package darkrim.present;

import java.util.List;

/** The name of an edge where surfaces meet, what their names share written once: {@code mosaic/die[1,1]/{edge,rim}/-y}. */
final class EdgeName {
    private EdgeName() {}

    /**
     * The short name.
     *
     * @param surfaces names of surfaces with commas and spaces between
     */
    static String of(String surfaces) {
        List<String> names = List.of(surfaces.split(", ", -1));
        if (names.size() != 2) {
            return Printable.of(surfaces);
        }
        List<String> one = List.of(names.get(0).split("/", -1));
        List<String> other = List.of(names.get(1).split("/", -1));
        int shorter = Math.min(one.size(), other.size());
        int start = 0;
        while (start < shorter && one.get(start).equals(other.get(start))) {
            start++;
        }
        int end = 0;
        while (end < shorter - start && one.get(one.size() - 1 - end).equals(other.get(other.size() - 1 - end))) {
            end++;
        }
        if (start == 0 || one.size() - end <= start || other.size() - end <= start) {
            return Printable.of(surfaces);
        }
        String head = String.join("/", one.subList(0, start));
        String tail = String.join("/", one.subList(one.size() - end, one.size()));
        String middle = String.join("/", one.subList(start, one.size() - end)) + ","
                + String.join("/", other.subList(start, other.size() - end));
        return Printable.of(head + "/{" + middle + "}" + (tail.isEmpty() ? "" : "/" + tail));
    }
}
