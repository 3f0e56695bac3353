package darkrim.view.look;

/** The class of light that is shown. */
public enum Light {
    /** Straight from the pupil. */
    DIRECT("direct"),
    /** After one reflection. */
    ONCE_REFLECTED("once reflected"),
    /** Both together. */
    TOTAL("direct + once reflected"),
    /** No light: parts in grey. */
    NONE("parts only");

    private final String words;

    Light(String words) {
        this.words = words;
    }

    /** Its name for people. */
    public String words() {
        return words;
    }
}
