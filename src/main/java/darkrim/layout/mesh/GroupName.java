package darkrim.layout.mesh;

import darkrim.layout.form.Wording;

/** Names in a file become steps of a path: signs that paths and patterns need for themselves become _. */
final class GroupName {
    private static final int LONGEST = 60;
    private static final String TAKEN = "/*?{}[],";

    private GroupName() {}

    static String of(String written) {
        StringBuilder name = new StringBuilder();
        written.strip()
                .codePoints()
                .limit(LONGEST)
                .forEach(c -> name.appendCodePoint(TAKEN.indexOf(c) >= 0 || Wording.isControl(c) ? '_' : c));
        return name.toString().strip();
    }
}
