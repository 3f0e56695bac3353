/**
 * What the designer wrote: parsed, checked, with positions. No geometry. Lengths in mm, angles in degrees.
 *
 * <p>In: the bytes of a layout file and of the files that it names. Out: a {@code Layout}, or findings with their
 * places, all of them at once. Main types: {@code LayoutReader} reads, {@code Layout} is what was read, {@code
 * Part} and {@code Shape} are what can be drawn, {@code Requirement} what is asked, {@code Dimension} a number
 * with a name, {@code LayoutSchema} the keys for editors.
 *
 * <p>It must not know: triangles, light and verdicts. Begin to read: {@code LayoutReader}, then {@code
 * LayoutKeys}.
 */
package darkrim.layout;
