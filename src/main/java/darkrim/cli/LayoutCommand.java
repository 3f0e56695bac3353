package darkrim.cli;

/** A command that works on one layout, for the report of a failure of the program itself. */
interface LayoutCommand {
    /** The layout file as the user named it. */
    String input();

    /** Whether details are shown too if the program breaks. */
    boolean verbose();
}
