/**
 * What is worked out for the window, away from it: layouts read, light measured, results read back.
 *
 * <p>In: a layout file, looks, positions that are dragged. Out: {@code Content}: layouts, lighting and facts about
 * surfaces, handed over whole from threads of its own. Main types: {@code ViewModel} is what the window shows,
 * {@code Loader} reads and checks, {@code MapMaker}, {@code PointLook}, {@code WayFinder} and {@code SourceFinder}
 * work in the background, {@code Dragging} follows dimensions.
 *
 * <p>It must not know: JavaFX: the thread of the window is reached through a function that they are given. Begin
 * to read: {@code ViewModel}.
 */
package darkrim.view.work;
