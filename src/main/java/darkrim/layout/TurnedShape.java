package darkrim.layout;

import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Parts about the z axis. Their circles are polygons: {@code chord} is the greatest distance allowed between the two, mm. Lengths in mm.
 */
public sealed interface TurnedShape extends Shape
        permits TurnedShape.Revolved, TurnedShape.Cone, TurnedShape.ScrewHead, TurnedShape.LabyrinthJoint, VanesShape {

    /**
     * A solid of revolution.
     *
     * @param profile corners (distance from the axis, height), counter-clockwise with the distance to the right and the height up
     * @param sides name of the face that each side makes; side i runs from corner i to the next
     * @param chord allowed distance between circle and polygon
     */
    record Revolved(List<Vector2D> profile, List<String> sides, double chord) implements TurnedShape {
        /** Copies the lists. */
        public Revolved {
            profile = List.copyOf(profile);
            sides = List.copyOf(sides);
        }
    }

    /**
     * A conical wall, open above and below.
     *
     * @param baseRadius inner radius at the base
     * @param topRadius inner radius at the top
     * @param base height of the base above the part's origin
     * @param height height of the wall
     * @param thickness thickness of the wall, measured level
     * @param chord allowed distance between circle and polygon
     */
    record Cone(double baseRadius, double topRadius, double base, double height, double thickness, double chord)
            implements TurnedShape {}

    /**
     * The head of a screw that stands on the plane z = 0 of the part.
     *
     * @param radius radius
     * @param height height
     * @param chamfer width and height of the chamfer around its top, 0 for none
     * @param socket the hexagonal hole in its top; absent for none
     * @param chord allowed distance between circle and polygon
     */
    record ScrewHead(double radius, double height, double chamfer, Optional<Socket> socket, double chord)
            implements TurnedShape {}

    /**
     * A hexagonal hole.
     *
     * @param across width across flats
     * @param depth depth
     */
    record Socket(double across, double depth) {}

    /**
     * A tongue in a groove, two bodies with a gap between them: a joint that light passes only by way of its walls.
     *
     * <p>From inside to outside: wall of the groove, gap, tongue, gap, wall; the base of the part is the underside of the groove's floor.
     *
     * @param path middle line of the tongue: a disc or a rectangle about the part's origin
     * @param tongue width of the tongue
     * @param gap gap on all sides of the tongue and over the rims of the groove
     * @param engagement height over which tongue and groove overlap
     * @param wall width of each wall of the groove
     * @param floor thickness of the floor of the groove, and of the cap that carries the tongue
     * @param chord allowed distance between circle and polygon
     */
    record LabyrinthJoint(
            darkrim.geom.Outline path,
            double tongue,
            double gap,
            double engagement,
            double wall,
            double floor,
            double chord)
            implements TurnedShape {
        /** Half of the whole width. */
        public double halfWidth() {
            return tongue / 2 + gap + wall;
        }
    }
}
