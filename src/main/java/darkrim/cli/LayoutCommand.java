package darkrim.cli;

/** A command that works on one layout. */
interface LayoutCommand {
    /** What it was told, also for the report of a failure of the program itself. */
    LayoutOptions options();
}
