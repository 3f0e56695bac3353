package darkrim.present;

import darkrim.layout.Layout;

/** Which layout a result is about. */
public final class LayoutWords {
    private static final int SHORT_HASH = 16;

    private LayoutWords() {}

    /** Title and revision. */
    public static String title(Layout layout) {
        String revision = layout.revision().isEmpty() ? "" : ", revision " + layout.revision();
        return Printable.of(layout.title() + revision);
    }

    /** The file with the beginning of its hash; a layout built in code has none. */
    public static String file(Layout layout) {
        String hash = layout.source().sha256();
        String shown = hash.substring(0, Math.min(SHORT_HASH, hash.length()));
        return Printable.of(layout.source().name()) + (hash.isEmpty() ? "" : ", SHA-256 " + shown + "...");
    }
}
