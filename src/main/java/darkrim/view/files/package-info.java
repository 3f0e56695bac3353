/**
 * Files that the window reads and writes beside results: the layout that someone edits, pictures, what it
 * remembers.
 *
 * <p>In: paths. Out: the news that a file has changed, pictures written whole, what is remembered from the last
 * time. Main types: {@code FileWatch}, {@code PictureFile}, {@code Memory}.
 *
 * <p>It must not know: JavaFX; what is in a layout. Begin to read: {@code FileWatch}.
 */
package darkrim.view.files;
