package darkrim.assembly;

import darkrim.geom.Triangulation;
import darkrim.layout.VanesShape;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** A set of vanes: with their wall one solid, without it a ring each. */
final class VanePieces {
    private VanePieces() {}

    /**
     * The pieces of a set of vanes.
     *
     * @throws IllegalArgumentException if the vanes run into each other or out of the wall
     */
    static Pieces of(VanesShape vanes) {
        return vanes.wallThickness().isPresent()
                ? withWall(vanes, vanes.wallThickness().getAsDouble())
                : rings(vanes);
    }

    private static Pieces withWall(VanesShape vanes, double thickness) {
        double top = vanes.base() + vanes.height();
        List<Vector2D> profile = new ArrayList<>();
        List<String> faces = new ArrayList<>();
        profile.add(Vector2D.of(vanes.wall().atBase(), vanes.base()));
        profile.add(Vector2D.of(vanes.wall().atBase() + thickness, vanes.base()));
        profile.add(Vector2D.of(vanes.wall().atTop() + thickness, top));
        profile.add(Vector2D.of(vanes.wall().atTop(), top));
        faces.addAll(List.of("base", "outside", "top"));
        for (int number = vanes.heights().size(); number >= 1; number--) {
            VaneProfile vane = VaneProfile.of(vanes, number);
            faces.add("inside/" + (number + 1));
            faces.addAll(vane.faces());
            profile.addAll(vane.corners());
        }
        faces.add("inside/1");
        Mesh mesh = Mesh.solid("");
        TurnedSkin skin = skin(profile, vanes.chord());
        TurnedPieces.requireWall(thickness, skin.chordError());
        skin.addTo(mesh, faces::get);
        return Pieces.of(mesh, skin.chordError());
    }

    private static Pieces rings(VanesShape vanes) {
        List<Mesh> meshes = new ArrayList<>();
        double error = 0;
        for (int number = 1; number <= vanes.heights().size(); number++) {
            VaneProfile vane = VaneProfile.of(vanes, number);
            // The root closes the ring; the names below the body do not repeat its number.
            List<String> faces = new ArrayList<>(vane.faces().stream()
                    .map(face -> face.substring(face.indexOf('/') + 1))
                    .toList());
            faces.add("root");
            TurnedSkin skin = skin(vane.corners(), vanes.chord());
            Mesh mesh = Mesh.solid(String.valueOf(number));
            skin.addTo(mesh, faces::get);
            meshes.add(mesh);
            error = Math.max(error, skin.chordError());
        }
        return new Pieces(meshes, List.of(), List.of(), error);
    }

    private static TurnedSkin skin(List<Vector2D> profile, double chord) {
        try {
            Triangulation.requireSimple(profile);
        } catch (IllegalArgumentException problem) {
            throw new IllegalArgumentException(
                    "its vanes run into each other or into the wall (" + problem.getMessage()
                            + "; distance from the axis, height)",
                    problem);
        }
        return new TurnedSkin(profile, chord);
    }
}
