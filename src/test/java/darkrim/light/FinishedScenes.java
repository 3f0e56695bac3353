package darkrim.light;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.reflection.Reflection;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Scenes in which a wall of one finish is lit by a pupil and throws light on a floor. */
public final class FinishedScenes {
    private static final Frame DOWN = Frame.of(Vector3D.of(0, 0, 100), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);

    private FinishedScenes() {}

    /**
     * A wall beside a floor of 30 x 30 mm.
     *
     * @param reflection the finish of the wall
     * @param lean how far the top of the wall, 30 mm up, is further out than its foot, mm
     */
    public static Scene wall(Reflection reflection, double lean) {
        Finish finish = new Finish("wall", reflection);
        return new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "floor/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("wall", finish, "wall/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("floor", at(-15, -15, 0), at(15, -15, 0), at(15, 15, 0), at(-15, 15, 0))
                .quad("wall", at(18, -20, 2), at(18 + lean, -20, 32), at(18 + lean, 20, 32), at(18, 20, 2))
                .build(Beam.of(new Pupil(Ring.disc(15), DOWN)));
    }

    /**
     * A scene with other finishes on its surfaces, one after the other from a list.
     *
     * @param scene the scene
     * @param reflections the finishes
     */
    public static Scene refinished(Scene scene, List<Reflection> reflections) {
        List<Finish> finishes = IntStream.range(0, reflections.size())
                .mapToObj(i -> new Finish("f" + i, reflections.get(i)))
                .toList();
        SceneBuilder builder = new SceneBuilder();
        for (Surface surface : scene.surfaces()) {
            if (surface.back()) {
                continue;
            }
            int back = scene.backSurface(surface.firstFacet());
            Finish finish = finishes.get(surface.index() % finishes.size());
            if (back == Scene.INSIDE) {
                builder.solid(surface.name(), finish, Place.IN_CODE);
            } else {
                String name = scene.surfaces().get(back).name();
                builder.sheet(surface.name(), finish, name, finishes.get(back % finishes.size()), Place.IN_CODE);
            }
            for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                builder.triangle(surface.name(), scene.corner(f, 0), scene.corner(f, 1), scene.corner(f, 2));
            }
        }
        return builder.build(scene.beam());
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }
}
