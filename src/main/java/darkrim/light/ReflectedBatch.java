package darkrim.light;

import darkrim.layout.Requirement.LightClass;
import darkrim.sampling.SamplePoints;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.StartPoints;
import java.util.Optional;

/** Measures a batch of samples of once-reflected light at a receiver, in all, by cell and by what reflected it. One use, one thread. */
final class ReflectedBatch {
    private final ReflectedLight reflected;
    private final double largest;
    private final boolean linked;
    private final ReflectorSums sums;
    private final MapSums map;
    private final Accumulator[] cells;

    /**
     * @param senders what can send light to the receiver
     * @param lit by surface number: whether it may get direct light
     * @param cells how many cells of a map the receiver has
     */
    ReflectedBatch(
            Scene scene,
            FacetTree tree,
            PupilSource pupil,
            StartPoints starts,
            Reflectors senders,
            boolean[] lit,
            int cells) {
        reflected = new ReflectedLight(scene, tree, pupil, starts, senders, lit);
        largest = senders.largestSample();
        linked = senders.links().isPresent();
        sums = new ReflectorSums(scene.surfaces().size());
        map = new MapSums(linked ? cells : 0);
        this.cells = Accumulator.many(linked ? 0 : cells);
    }

    /**
     * Takes the samples.
     *
     * @param random their coordinates
     * @param point draws points of the receiver
     */
    Tally tally(SamplePoints random, PointSampler point, int samples) {
        Accumulator all = Accumulator.of(random);
        for (int i = 0; i < samples; i++) {
            random.begin();
            double value = reflected.sampleMean(random, point);
            all.add(value);
            if (linked) {
                addByLink(point, value);
            } else if (point.cell >= 0) {
                cells[point.cell].add(value);
            }
            if (value > 0) {
                addByReflector();
            }
        }
        return new Tally(
                LightClass.ONCE_REFLECTED,
                all.estimate(largest),
                Estimate.none(1),
                linked ? map.estimates(samples, largest) : Accumulator.estimates(cells, largest),
                sums.estimates(samples, largest),
                sums.incidences(),
                Optional.empty());
    }

    private void addByLink(PointSampler point, double value) {
        if (reflected.gatheredCell == point.cell) {
            map.add(point.cell, value);
        } else {
            map.add(reflected.gatheredCell, reflected.diffuseValue + reflected.lobeValue);
            map.add(point.cell, reflected.imageValue);
        }
    }

    private void addByReflector() {
        sums.add(reflected.gatheredVia, Reflector.Part.DIFFUSE, reflected.diffuseValue, reflected.diffuseIncidence);
        sums.add(reflected.gatheredVia, Reflector.Part.LOBE, reflected.lobeValue, reflected.lobeIncidence);
        double byMirror = reflected.followedValue;
        double incidence = reflected.followedIncidence;
        if (reflected.imageVia == reflected.gatheredVia) {
            byMirror += reflected.imageValue;
            incidence = (reflected.followedValue * reflected.followedIncidence
                            + reflected.imageValue * reflected.imageIncidence)
                    / byMirror;
        } else {
            sums.add(reflected.imageVia, Reflector.Part.MIRROR, reflected.imageValue, reflected.imageIncidence);
        }
        sums.add(reflected.gatheredVia, Reflector.Part.MIRROR, byMirror, incidence);
    }
}
