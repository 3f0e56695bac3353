package darkrim.present.picture;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.light.Estimate;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Small scenes with known values for the tests of pictures. */
final class PictureScenes {
    static final ColourScale SCALE =
            new ColourScale(ColourScale.Spacing.LOGARITHMIC, 1e-3, 10, "relative irradiance", "");

    private PictureScenes() {}

    /** A floor from -10 to 10 mm in x and -5 to 5 mm in y. */
    static Scene floor() {
        return new SceneBuilder()
                .solid("floor", Finish.ABSORBER, Place.IN_CODE)
                .quad("floor", at(-10, -5, 0), at(10, -5, 0), at(10, 5, 0), at(-10, 5, 0))
                .build(beam());
    }

    /** A block from -10 to 10 mm in x, -5 to 5 mm in y and 0 to 4 mm in z. */
    static Scene block() {
        double[] low = {-10, -5, 0};
        double[] high = {10, 5, 4};
        SceneBuilder builder = new SceneBuilder();
        for (int axis = 0; axis < 3; axis++) {
            for (int end = 0; end < 2; end++) {
                String name = "block/" + (end == 0 ? "-" : "+") + "xyz".charAt(axis);
                int u = (axis + (end == 0 ? 2 : 1)) % 3;
                int v = (axis + (end == 0 ? 1 : 2)) % 3;
                Vector3D[] corners = new Vector3D[4];
                for (int k = 0; k < 4; k++) {
                    double[] corner = new double[3];
                    corner[axis] = end == 0 ? low[axis] : high[axis];
                    corner[u] = k == 1 || k == 2 ? high[u] : low[u];
                    corner[v] = k > 1 ? high[v] : low[v];
                    corners[k] = Vector3D.of(corner);
                }
                builder.solid(name, Finish.ABSORBER, Place.IN_CODE)
                        .quad(name, corners[0], corners[1], corners[2], corners[3]);
            }
        }
        return builder.build(beam());
    }

    /** All surfaces with a value for each surface. */
    static Subject subject(
            Scene scene, IntToDoubleFunction value, Map<Integer, Verdict> verdicts, Optional<Section> section) {
        List<SurfaceMap> maps = new ArrayList<>();
        scene.surfaces()
                .forEach(surface -> maps.add(
                        known(SurfaceCells.whole(scene, surface), cell -> value.applyAsDouble(surface.index()))));
        BitSet all = new BitSet();
        all.set(0, scene.surfaces().size());
        return new Subject(scene, all, Optional.of(LightKind.DIRECT), maps, SCALE, 1, verdicts, section, List.of());
    }

    /** A map with known values. */
    static SurfaceMap known(SurfaceCells cells, IntToDoubleFunction value) {
        List<Estimate> estimates = new ArrayList<>();
        for (int cell = 0; cell < cells.count(); cell++) {
            estimates.add(new Estimate(100, value.applyAsDouble(cell), 0, 10));
        }
        return new SurfaceMap(cells, DarkProof.NONE, estimates, estimates, 1);
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    private static Beam beam() {
        Frame frame = new Frame(at(0, 0, 100), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y, Vector3D.Unit.MINUS_Z);
        return Beam.of(new Pupil(Ring.disc(10), frame));
    }
}
