/**
 * The window itself, in JavaFX: thin, with what it shows kept by {@link darkrim.view.work.ViewModel}.
 *
 * <p>In: a {@code view.work.ViewModel} and what mouse and keys do. Out: what is on the screen, and calls to that
 * model. Main types: {@code ViewerWindow} puts the panes together, {@code SceneView} and {@code SurfaceNode} show
 * parts, {@code DetailPane}, {@code MapPane} and {@code SeenPane} what is known of one, {@code Commands} and
 * {@code Keys} what can be done.
 *
 * <p>It must not know: how anything is worked out. What can be said without a display belongs into the packages
 * beside it, where it can be tested without one. Begin to read: {@code ViewerWindow}.
 */
package darkrim.view.window;
