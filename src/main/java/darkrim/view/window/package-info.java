/** The window itself, in JavaFX: thin, with what it shows kept by {@link darkrim.view.work.ViewModel}. */
package darkrim.view.window;
