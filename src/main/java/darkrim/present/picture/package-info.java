/**
 * Pictures of the light: colours and scales, and scenes drawn by the ray core, without any display.
 *
 * <p>In: a scene with its maps and a {@code View} or {@code Camera}. Out: a picture in memory, with scale, legend
 * and words. Main types: {@code ScenePicture} draws parts, {@code MapPicture} one flat map, {@code PixelPicture}
 * what a point sees, {@code ColourScale} says which colour a value has, for every picture and the window.
 *
 * <p>It must not know: a display: it must run on a server without one. Begin to read: {@code ScenePicture}.
 */
package darkrim.present.picture;
