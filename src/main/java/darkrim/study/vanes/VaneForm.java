package darkrim.study.vanes;

import darkrim.layout.Shape.Toward;

/**
 * What the vanes are made like; it does not decide where they stand. Lengths in mm, angles in degrees.
 *
 * @param name name of the part
 * @param thickness thickness of a vane
 * @param land height of the straight land at the edge
 * @param bevel angle between bevel and axis, 0 for a square edge
 * @param toward the side on which the edge is
 * @param wallThickness thickness of the wall
 * @param chord allowed distance between a circle and its polygon
 */
public record VaneForm(
        String name, double thickness, double land, double bevel, Toward toward, double wallThickness, double chord) {}
