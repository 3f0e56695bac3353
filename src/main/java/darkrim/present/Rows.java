package darkrim.present;

import java.util.List;

/** How many rows of a long list are shown. */
record Rows(int most) {
    /** Everything. */
    static final Rows ALL = new Rows(Integer.MAX_VALUE);

    /** The rows that are shown. One row more than the limit is shown too, since a line would be spent on counting it. */
    <T> List<T> shown(List<T> all) {
        return all.size() - 1 <= most ? all : all.subList(0, most);
    }

    /** How many are left out. */
    int left(List<?> all) {
        return all.size() - shown(all).size();
    }
}
