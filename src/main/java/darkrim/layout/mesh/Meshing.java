package darkrim.layout.mesh;

import java.io.Serializable;

/**
 * How a file of curved surfaces was turned into facets.
 *
 * @param program the program that did it, with its version
 * @param tolerance how far facets may lie from the true surface, as the layout asks, mm
 * @param angle greatest angle between neighbouring facets of a curved face that was asked for, degrees
 * @param deviation how far they were found to lie from the corners of a mesh that is finer, mm; never more than the tolerance
 */
public record Meshing(String program, double tolerance, double angle, double deviation) implements Serializable {}
