/** The window: a layout in three dimensions, with the light on it. Only here is JavaFX used, and only in {@code view.window}. */
package darkrim.view;
