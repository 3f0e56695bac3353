package darkrim.light;

import darkrim.layout.Requirement.LightClass;
import darkrim.sampling.SamplePoints;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Measures a batch of samples of direct light at a receiver. One use, one thread. */
final class DirectBatch {
    private final Scene scene;
    private final PupilSource pupil;
    private final DirectLight direct;
    private final Accumulator seen = new Accumulator();
    private final Accumulator[] cells;

    /**
     * @param cells how many cells of a map the receiver has
     */
    DirectBatch(Scene scene, FacetTree tree, PupilSource pupil, int cells) {
        this.scene = scene;
        this.pupil = pupil;
        this.direct = new DirectLight(scene, tree, pupil);
        this.cells = Accumulator.many(cells);
    }

    /**
     * Takes the samples.
     *
     * @param random their coordinates
     * @param point draws points of the receiver
     * @param largest no sample can be larger, relative irradiance
     */
    Tally tally(SamplePoints random, PointSampler point, int samples, double largest) {
        Accumulator all = Accumulator.of(random);
        Optional<Tally.ExampleRay> example = Optional.empty();
        for (int i = 0; i < samples; i++) {
            random.begin();
            point.next(random);
            double value = direct.sample(random, point.x, point.y, point.z, point.nx, point.ny, point.nz, point.plane);
            all.add(value);
            if (direct.overPupil) {
                seen.add(direct.seen ? 1 : 0);
            }
            if (point.cell >= 0) {
                cells[point.cell].add(value);
            }
            if (value > 0 && example.isEmpty()) {
                example = Optional.of(ray(point));
            }
        }
        return new Tally(
                LightClass.DIRECT,
                all.estimate(largest),
                seen.estimate(1),
                Accumulator.estimates(cells, largest),
                new TreeMap<>(),
                new TreeMap<>(),
                example);
    }

    private Tally.ExampleRay ray(PointSampler point) {
        Vector3D to = Vector3D.of(point.x, point.y, point.z);
        Vector3D way = Vector3D.of(direct.toX, direct.toY, direct.toZ);
        Vector3D from = pupil.window == null ? to.add(way) : scene.beam().origin(to, way);
        return new Tally.ExampleRay(from, to);
    }
}
