/** What the designer wrote: parsed, checked, with positions. No geometry. Lengths in mm, angles in degrees. */
package darkrim.layout;
