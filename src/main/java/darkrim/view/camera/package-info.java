/**
 * Where the viewer stands, and which line of sight belongs to which pixel: plain arithmetic, no window.
 *
 * <p>In: movements of a mouse, boxes, sizes of a picture. Out: a {@code Camera} after the movement and the {@code
 * SightLine} of a pixel. Immutable. Main types: {@code Camera}, {@code SightLine}, {@code Direction}.
 *
 * <p>It must not know: JavaFX, parts and light. Begin to read: {@code Camera}.
 */
package darkrim.view.camera;
