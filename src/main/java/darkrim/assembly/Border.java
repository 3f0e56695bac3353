package darkrim.assembly;

import darkrim.geom.MitredOffset;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.DetectorsShape.Side;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * The border of a flat region as a loop of corners, with the step that each side adds to the path of a face.
 *
 * <p>The sides of a rectangle along the axes are named by where they lie ({@code /-x}, {@code /+x}, {@code /-y}, {@code /+y}), those of
 * another polygon by number from 1, counter-clockwise; a round border has one face and no step.
 *
 * @param loop corners, counter-clockwise, mm
 * @param steps one step a side; the side runs from the corner of the same number to the next
 * @param chordError distance between a curved outline and the loop, mm
 */
record Border(List<Vector2D> loop, List<String> steps, double chordError) {
    /** The border of a region filled with material: a polygon inside a round outline. */
    static Border ofMaterial(Outline outline) {
        if (outline instanceof Ring ring) {
            RoundSides sides = sidesOf(ring, 0);
            return round(sides.inside(ring.radius()), sides.chordError(ring.radius()));
        }
        return straight(((Polygon) outline).corners());
    }

    /**
     * The border of a hole: a polygon around a round outline.
     *
     * @param outline the hole's outline
     * @param widen by how much the border is moved outward, mm
     * @param widest the most by which any border of the same hole is moved outward: borders of one hole have as many corners
     */
    static Border ofHole(Outline outline, double widen, double widest) {
        if (outline instanceof Ring ring) {
            RoundSides sides = sidesOf(ring, widest);
            return round(sides.around(ring.radius() + widen), sides.chordError(ring.radius() + widen));
        }
        List<Vector2D> corners = ((Polygon) outline).corners();
        return new Border(
                MitredOffset.outward(corners, widen), straight(corners).steps(), 0);
    }

    /** The loop moved by a vector, mm. */
    Border moved(Vector2D by) {
        return new Border(loop.stream().map(by::add).toList(), steps, chordError);
    }

    private static RoundSides sidesOf(Ring ring, double widest) {
        if (ring.hole() > 0) {
            throw new IllegalArgumentException("an outline with a hole of its own cannot bound a plate or an opening");
        }
        return RoundSides.forRadius(ring.radius() + widest);
    }

    private static Border round(List<Vector2D> loop, double chordError) {
        return new Border(loop, loop.stream().map(corner -> "").toList(), chordError);
    }

    private static Border straight(List<Vector2D> corners) {
        boolean rectangle = corners.size() == 4;
        List<String> byDirection = new ArrayList<>();
        List<String> byNumber = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            Vector2D along = corners.get((i + 1) % corners.size()).subtract(corners.get(i));
            rectangle &= along.getX() == 0 || along.getY() == 0;
            byDirection.add("/" + outwardOf(along).label());
            byNumber.add("/" + (i + 1));
        }
        return new Border(corners, rectangle ? byDirection : byNumber, 0);
    }

    /** The side on which an edge of a counter-clockwise rectangle lies. */
    private static Side outwardOf(Vector2D along) {
        if (along.getY() == 0) {
            return along.getX() > 0 ? Side.MINUS_Y : Side.PLUS_Y;
        }
        return along.getY() > 0 ? Side.PLUS_X : Side.MINUS_X;
    }
}
