package darkrim.layout;

/**
 * Wire bonds, each a round wire along a parabola from a foot at the part's origin plane to a foot at another height: the wire rises above both
 * to its loop height. Wires lie along x and stand side by side along y, in a row about the origin. Lengths in mm.
 *
 * @param diameter diameter of the wire
 * @param span distance along x from the first foot, at x = 0, to the second
 * @param drop how far the second foot lies below the first; negative if above
 * @param loopHeight height of the middle of the wire at its highest above the first foot
 * @param count number of wires
 * @param spacing step between them along y
 * @param chord allowed distance between the wire and its facets
 */
public record BondWiresShape(
        double diameter, double span, double drop, double loopHeight, int count, double spacing, double chord)
        implements Shape {}
