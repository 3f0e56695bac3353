package darkrim.assembly;

import darkrim.geom.MitredOffset;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.TurnedShape;
import darkrim.layout.TurnedShape.Cone;
import darkrim.layout.TurnedShape.LabyrinthJoint;
import darkrim.layout.TurnedShape.Revolved;
import darkrim.layout.TurnedShape.ScrewHead;
import darkrim.layout.VanesShape;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Parts about the z axis. */
final class TurnedPieces {
    private static final List<String> GROOVE =
            List.of("base", "outside", "rim-outer", "wall-outer", "floor", "wall-inner", "rim-inner", "inside");
    private static final List<String> TONGUE =
            List.of("under-inner", "tongue-inner", "tip", "tongue-outer", "under-outer", "outside", "top", "inside");

    private TurnedPieces() {}

    /**
     * The pieces of a part.
     *
     * @throws IllegalArgumentException if its sizes do not make a body
     */
    static Pieces of(TurnedShape shape) {
        if (shape instanceof VanesShape vanes) {
            return VanePieces.of(vanes);
        } else if (shape instanceof Cone cone) {
            return cone(cone);
        } else if (shape instanceof Revolved revolved) {
            return turned(revolved.profile(), revolved.sides(), revolved.chord());
        } else if (shape instanceof LabyrinthJoint joint) {
            return labyrinthJoint(joint);
        }
        return screwHead((ScrewHead) shape);
    }

    private static Pieces turned(List<Vector2D> profile, List<String> faces, double chord) {
        TurnedSkin skin = new TurnedSkin(profile, chord);
        Mesh mesh = Mesh.solid("");
        skin.addTo(mesh, faces::get);
        return Pieces.of(mesh, skin.chordError());
    }

    private static Pieces cone(Cone cone) {
        double top = cone.base() + cone.height();
        List<Vector2D> profile = List.of(
                Vector2D.of(cone.baseRadius(), cone.base()),
                Vector2D.of(cone.baseRadius() + cone.thickness(), cone.base()),
                Vector2D.of(cone.topRadius() + cone.thickness(), top),
                Vector2D.of(cone.topRadius(), top));
        double largest = Math.max(cone.baseRadius(), cone.topRadius()) + cone.thickness();
        requireWall(
                cone.thickness(), RoundSides.forRadius(largest, cone.chord()).chordError(largest));
        return turned(profile, List.of("base", "outside", "top", "inside"), cone.chord());
    }

    /** A wall must be thicker than its two polygons may come together. */
    static void requireWall(double thickness, double chordError) {
        if (!(thickness > 2 * chordError)) {
            throw new IllegalArgumentException(
                    "its wall is thinner than the polygons that stand for its circles allow, %.3g mm"
                            .formatted(2 * chordError));
        }
    }

    private static Pieces screwHead(ScrewHead head) {
        RoundSides sides = RoundSides.forRadius(head.radius(), head.chord());
        List<Vector3D> foot = Mesh.at(0, sides.inside(head.radius()));
        List<Vector2D> rim = sides.inside(head.radius() - head.chamfer());
        List<Vector3D> side = Mesh.at(head.height() - head.chamfer(), sides.inside(head.radius()));
        Mesh mesh = Mesh.solid("");
        mesh.band(i -> "side", foot, side);
        if (head.chamfer() > 0) {
            mesh.band(i -> "chamfer", side, Mesh.at(head.height(), rim));
        }
        mesh.level("underside", 0, sides.inside(head.radius()), List.of(), false);
        if (head.socket().isEmpty()) {
            mesh.level("top", head.height(), rim, List.of(), true);
        } else {
            TurnedShape.Socket socket = head.socket().get();
            List<Vector2D> hexagon = hexagon(socket.across());
            double floor = head.height() - socket.depth();
            mesh.level("top", head.height(), rim, List.of(hexagon), true);
            mesh.band(i -> "socket/wall", Mesh.at(head.height(), hexagon), Mesh.at(floor, hexagon));
            mesh.level("socket/floor", floor, hexagon, List.of(), true);
        }
        return Pieces.of(mesh, sides.chordError(head.radius()));
    }

    /** A hexagon of a width across flats, two of its sides square to x, counter-clockwise, mm. */
    static List<Vector2D> hexagon(double across) {
        double x = across / 2;
        double corner = across / StrictMath.sqrt(3);
        return List.of(
                Vector2D.of(x, -corner / 2),
                Vector2D.of(x, corner / 2),
                Vector2D.of(0, corner),
                Vector2D.of(-x, corner / 2),
                Vector2D.of(-x, -corner / 2),
                Vector2D.of(0, -corner));
    }

    private static Pieces labyrinthJoint(LabyrinthJoint joint) {
        double half = joint.tongue() / 2;
        double slot = half + joint.gap();
        double wide = joint.halfWidth();
        double floor = joint.floor();
        double rim = floor + joint.gap() + joint.engagement();
        List<Vector2D> groove = List.of(
                Vector2D.of(-wide, 0),
                Vector2D.of(wide, 0),
                Vector2D.of(wide, rim),
                Vector2D.of(slot, rim),
                Vector2D.of(slot, floor),
                Vector2D.of(-slot, floor),
                Vector2D.of(-slot, rim),
                Vector2D.of(-wide, rim));
        double under = rim + joint.gap();
        List<Vector2D> tongue = List.of(
                Vector2D.of(-wide, under),
                Vector2D.of(-half, under),
                Vector2D.of(-half, floor + joint.gap()),
                Vector2D.of(half, floor + joint.gap()),
                Vector2D.of(half, under),
                Vector2D.of(wide, under),
                Vector2D.of(wide, under + floor),
                Vector2D.of(-wide, under + floor));
        if (joint.path() instanceof Ring ring) {
            return roundJoint(joint, ring, groove, tongue);
        }
        List<Vector2D> path = ((Polygon) joint.path()).corners();
        return new Pieces(
                List.of(along(path, "groove", groove, GROOVE), along(path, "cap", tongue, TONGUE)),
                List.of(),
                List.of(),
                0);
    }

    private static Pieces roundJoint(LabyrinthJoint joint, Ring ring, List<Vector2D> groove, List<Vector2D> tongue) {
        List<Mesh> meshes = new ArrayList<>();
        double error = 0;
        for (boolean lower : new boolean[] {true, false}) {
            List<Vector2D> profile = (lower ? groove : tongue)
                    .stream()
                            .map(corner -> Vector2D.of(ring.radius() + corner.getX(), corner.getY()))
                            .toList();
            TurnedSkin skin = new TurnedSkin(profile, joint.chord());
            Mesh mesh = Mesh.solid(lower ? "groove" : "cap");
            skin.addTo(mesh, (lower ? GROOVE : TONGUE)::get);
            meshes.add(mesh);
            error = Math.max(error, skin.chordError());
        }
        double least = Math.min(joint.gap(), Math.min(joint.wall(), joint.tongue()));
        requireWall(least, error);
        return new Pieces(meshes, List.of(), List.of(), error);
    }

    /** A profile (distance outward from a path, height) drawn along a polygon, mitred at its corners. */
    private static Mesh along(List<Vector2D> path, String name, List<Vector2D> profile, List<String> faces) {
        Mesh mesh = Mesh.solid(name);
        List<List<Vector3D>> loops = profile.stream()
                .map(corner -> Mesh.at(corner.getY(), MitredOffset.outward(path, corner.getX())))
                .toList();
        IntStream.range(0, profile.size())
                .forEach(i -> mesh.band(
                        side -> faces.get(i) + "/" + Loft.SIDES.get(side).label(),
                        loops.get(i),
                        loops.get((i + 1) % loops.size())));
        return mesh;
    }
}
