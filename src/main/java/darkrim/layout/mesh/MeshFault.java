package darkrim.layout.mesh;

/** What is wrong with the content of a mesh file. */
final class MeshFault extends Exception {
    private static final long serialVersionUID = 1L;

    private final String code;
    private final int line;
    private final int column;

    /**
     * @param code code of the finding
     * @param line line in the file, from 1; 0 where there is none
     * @param column column, from 1; 0 where there is none
     * @param message what is wrong and what was expected
     */
    MeshFault(String code, int line, int column, String message) {
        super(message);
        this.code = code;
        this.line = line;
        this.column = column;
    }

    /** A fault of a file without lines. */
    MeshFault(String code, String message) {
        this(code, 0, 0, message);
    }

    String code() {
        return code;
    }

    int line() {
        return line;
    }

    int column() {
        return column;
    }
}
