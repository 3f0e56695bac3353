package darkrim.layout;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import java.util.List;

/** Parts whose outlines go straight through along z. Lengths in mm. */
public sealed interface CutShape extends Shape permits CutShape.Extruded, CutShape.Honeycomb, CutShape.ColdStop {

    /**
     * An outline drawn out along z, from the plane z = 0 of the part.
     *
     * @param outline the outline, counter-clockwise
     * @param sides name of the face that each side makes; side i runs from corner i to the next
     * @param length length along z
     */
    record Extruded(Polygon outline, List<String> sides, double length) implements CutShape {
        /** Copies the list. */
        public Extruded {
            sides = List.copyOf(sides);
        }
    }

    /**
     * A plate full of hexagonal cells, two sides of each square to x; every second row is moved by half a step. Only whole cells are cut.
     *
     * @param outer outline
     * @param height height of the underside above the part's origin
     * @param thickness thickness
     * @param cell width of a cell across flats
     * @param wall least material between cells, and between cells and the rim
     */
    record Honeycomb(Outline outer, double height, double thickness, double cell, double wall) implements CutShape {}

    /**
     * A round stop with a hub in the middle that is held by spider arms. Arm 1 lies along +x, the others follow counter-clockwise.
     *
     * @param outerRadius outer radius
     * @param openingRadius radius of the opening
     * @param hubRadius radius of the hub
     * @param arms number of arms
     * @param armWidth width of an arm
     * @param height height of the underside above the part's origin
     * @param thickness thickness
     * @param chord allowed distance between circle and polygon
     */
    record ColdStop(
            double outerRadius,
            double openingRadius,
            double hubRadius,
            int arms,
            double armWidth,
            double height,
            double thickness,
            double chord)
            implements CutShape {}
}
