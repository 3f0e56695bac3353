/** Parts of a layout turned into placed, named surfaces of triangles. No light. Lengths in mm, angles in degrees. */
package darkrim.assembly;
