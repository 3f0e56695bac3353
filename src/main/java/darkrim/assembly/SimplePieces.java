package darkrim.assembly;

import darkrim.geom.Polygon;
import darkrim.layout.Shape;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Block, box, tube and the sheets: parts of one body. */
final class SimplePieces {
    private SimplePieces() {}

    static Pieces of(Shape.Block block) {
        Mesh mesh = Mesh.solid("");
        List<Vector2D> loop = rectangle(block.width(), block.depth());
        mesh.band(i -> Loft.SIDES.get(i).label(), Mesh.at(0, loop), Mesh.at(block.height(), loop));
        mesh.level("+z", block.height(), loop, List.of(), true);
        mesh.level("-z", 0, loop, List.of(), false);
        return Pieces.of(mesh);
    }

    /** Walls of level thickness: the outer wall leans like the inner one. */
    static Pieces of(Shape.Box box) {
        double lean = 2 * box.height() * StrictMath.tan(Math.toRadians(box.tilt()));
        double wall = 2 * box.thickness();
        if (!(box.width() + lean > 0 && box.depth() + lean > 0)) {
            throw new IllegalArgumentException("its walls meet below their top: lessen the tilt or the height");
        }
        double top = box.base() + box.height();
        return Pieces.of(hollow(
                Mesh.at(box.base(), rectangle(box.width(), box.depth())),
                Mesh.at(top, rectangle(box.width() + lean, box.depth() + lean)),
                Mesh.at(box.base(), rectangle(box.width() + wall, box.depth() + wall)),
                Mesh.at(top, rectangle(box.width() + lean + wall, box.depth() + lean + wall)),
                Loft.SIDES.stream().map(side -> "/" + side.label()).toList()));
    }

    /** The inner wall is a polygon around its circle, the outer one a polygon inside: never more material than the true tube. */
    static Pieces of(Shape.Tube tube) {
        RoundSides sides = RoundSides.forRadius(tube.outerRadius());
        double error = sides.chordError(tube.outerRadius());
        if (!(tube.outerRadius() - tube.innerRadius() > 2 * error)) {
            throw new IllegalArgumentException(
                    "its wall is thinner than the polygons that stand for its circles allow, %.3g mm"
                            .formatted(2 * error));
        }
        double top = tube.base() + tube.height();
        List<Vector2D> inner = sides.around(tube.innerRadius());
        List<Vector2D> outer = sides.inside(tube.outerRadius());
        Mesh mesh = hollow(
                Mesh.at(tube.base(), inner),
                Mesh.at(top, inner),
                Mesh.at(tube.base(), outer),
                Mesh.at(top, outer),
                inner.stream().map(corner -> "").toList());
        return Pieces.of(mesh, error);
    }

    /** The solid between an inner and an outer wall. */
    private static Mesh hollow(
            List<Vector3D> innerBase,
            List<Vector3D> innerTop,
            List<Vector3D> outerBase,
            List<Vector3D> outerTop,
            List<String> steps) {
        Mesh mesh = Mesh.solid("");
        mesh.band(i -> "inside" + steps.get(i), innerTop, innerBase);
        mesh.band(i -> "outside" + steps.get(i), outerBase, outerTop);
        mesh.band(i -> "top" + steps.get(i), outerTop, innerTop);
        mesh.band(i -> "base" + steps.get(i), innerBase, outerBase);
        return mesh;
    }

    /** The rim is a polygon inside its circle, the hole a polygon around its own: never more material than the true disc. */
    static Pieces of(Shape.Disc disc) {
        Mesh mesh = Mesh.sheet("back");
        RoundSides sides = RoundSides.forRadius(disc.radius());
        double error = sides.chordError(disc.radius());
        List<Vector2D> rim = sides.inside(disc.radius());
        if (disc.hole() == 0) {
            mesh.level("front", 0, rim, List.of(), true);
            return Pieces.of(mesh, error);
        }
        if (!(disc.radius() - disc.hole() > 2 * error)) {
            throw new IllegalArgumentException("its hole leaves too narrow a rim");
        }
        mesh.band(i -> "front", Mesh.at(0, rim), Mesh.at(0, sides.around(disc.hole())));
        return Pieces.of(mesh, error);
    }

    static Pieces of(Shape.Rectangle sheet) {
        Mesh mesh = Mesh.sheet("back");
        mesh.level("front", 0, rectangle(sheet.width(), sheet.depth()), List.of(), true);
        return Pieces.of(mesh);
    }

    private static List<Vector2D> rectangle(double width, double depth) {
        return Polygon.rectangle(width, depth).corners();
    }
}
