package darkrim.study.irradiance;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.trace.FacetTree;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Small scenes for the tests of maps. */
final class MapScenes {
    private static final Finish GREY = new Finish("grey", 0.5, 0);

    private MapScenes() {}

    /** A floor of 20 x 20 mm, half in the shade of a plate 5 mm above it with its edge at x = 0; a pupil of 20 mm 100 mm above. */
    static Scene halfShaded() {
        return frame(new SceneBuilder())
                .sheet("plate", Finish.ABSORBER, "plate/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("plate", at(-30, -30, 5), at(0, -30, 5), at(0, 30, 5), at(-30, 30, 5))
                .build(beam());
    }

    /** The floor with a grey wall of 8 mm that stands along its edge at x = 10. */
    static Scene wall() {
        return frame(new SceneBuilder())
                .sheet("wall", GREY, "wall/back", GREY, Place.IN_CODE)
                .quad("wall", at(10, -10, 0), at(10, -10, 8), at(10, 10, 8), at(10, 10, 0))
                .build(beam());
    }

    /** A square plate of 30 mm with a square hole of 10 mm in the middle, and a cap of three facets. */
    static Scene holed() {
        SceneBuilder builder = new SceneBuilder().solid("ring", Finish.ABSORBER, Place.IN_CODE);
        double[][] outer = {{-15, -15}, {15, -15}, {15, 15}, {-15, 15}};
        double[][] inner = {{-5, -5}, {5, -5}, {5, 5}, {-5, 5}};
        for (int i = 0; i < 4; i++) {
            int j = (i + 1) % 4;
            builder.quad(
                    "ring",
                    at(outer[i][0], outer[i][1], 1),
                    at(outer[j][0], outer[j][1], 1),
                    at(inner[j][0], inner[j][1], 1),
                    at(inner[i][0], inner[i][1], 1));
        }
        builder.solid("cap", Finish.ABSORBER, Place.IN_CODE);
        Vector3D top = at(0, 0, 3);
        builder.triangle("cap", at(2, 0, 2), at(-1, 2, 2), top)
                .triangle("cap", at(-1, 2, 2), at(-1, -2, 2), top)
                .triangle("cap", at(-1, -2, 2), at(2, 0, 2), top);
        return builder.build(beam());
    }

    static FacetTree tree(Scene scene) {
        return FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
    }

    private static SceneBuilder frame(SceneBuilder builder) {
        return builder.solid("floor", GREY, Place.IN_CODE)
                .quad("floor", at(-10, -10, 0), at(10, -10, 0), at(10, 10, 0), at(-10, 10, 0));
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    private static Beam beam() {
        Frame frame = new Frame(at(0, 0, 100), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y, Vector3D.Unit.MINUS_Z);
        return Beam.of(new Pupil(Ring.disc(10), frame));
    }
}
