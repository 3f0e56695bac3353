/**
 * The window: a layout in three dimensions, with the light on it. Only here is JavaFX used, and only in {@code
 * view.window}.
 *
 * <p>In: a layout file, and what a mouse and keys do. Out: a window. Main types: {@code Viewer} opens it; what can
 * be thought through without a display stands in the packages below, apart from {@code view.window}.
 *
 * <p>It must not know: other ways to a verdict than those of the study packages. Begin to read: {@code Viewer}.
 */
package darkrim.view;
