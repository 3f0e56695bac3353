package darkrim.verdict;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.CellGrid;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A floor of four cells in the full beam beside a wall that sends light onto it. */
final class FloorAndWall {
    private FloorAndWall() {}

    static Scene scene(Finish floor, Finish wall) {
        Frame frame = Frame.of(Vector3D.of(0, 0, 200), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        return new SceneBuilder()
                .sheet("floor/front", floor, "floor/back", floor, Place.IN_CODE)
                .sheet("wall/front", wall, "wall/back", wall, Place.IN_CODE)
                .quad("floor/front", at(-5, -5, 0), at(5, -5, 0), at(5, 5, 0), at(-5, 5, 0))
                .quad("wall/front", at(5, -5, 0), at(5, -5, 10), at(5, 5, 10), at(5, 5, 0))
                .grid("floor/front", new CellGrid(at(-5, -5, 0), at(10, 0, 0), at(0, 10, 0), 2, 2))
                .build(Beam.of(new Pupil(Ring.disc(20), frame)));
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }
}
