package darkrim.study.irradiance;

/** Which light a map shows. */
public enum LightKind {
    /** Straight from the pupil. */
    DIRECT("direct light"),
    /** After one reflection. */
    ONCE_REFLECTED("once-reflected light"),
    /** Both together; more than one reflection is not in it. */
    TOTAL("direct and once-reflected light");

    private final String words;

    LightKind(String words) {
        this.words = words;
    }

    /** In a few plain words. */
    public String words() {
        return words;
    }
}
