package darkrim.present.json;

/** The program that wrote a document. */
record ProgramDocument(String name, String version) {
    static ProgramDocument of(String version) {
        return new ProgramDocument("Darkrim", version);
    }
}
