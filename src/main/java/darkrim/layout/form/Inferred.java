package darkrim.layout.form;

/** What can be said about the measure of a piece of a formula. */
sealed interface Inferred {
    /**
     * It measures this.
     *
     * @param measure what
     */
    record Known(Measure measure) implements Inferred {}

    /** Made of bare numbers only: it stands for whatever makes sense. */
    record Anything() implements Inferred {}

    /** It uses a dimension of which nothing is known yet. */
    record Open() implements Inferred {}

    Inferred ANYTHING = new Anything();
    Inferred OPEN = new Open();
}
