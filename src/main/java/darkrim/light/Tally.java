package darkrim.light;

import darkrim.layout.Requirement.LightClass;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What was measured at a receiver, of one class of light. Relative irradiance throughout. Immutable.
 *
 * @param light the class of light
 * @param irradiance mean over the receiver
 * @param pupilSeen share of the pupil's area that is seen, where the pupil was sampled over its area; otherwise without samples
 * @param cells mean over each cell of the surface's map, by cell number; empty where there is no map
 * @param by once-reflected light by what reflected it, of all samples; empty for direct light
 * @param incidences for each of these the mean cosine of the angle at which light struck it, weighted by what came
 * @param example a ray that carried light, from the pupil to the receiver; empty where none was found
 */
public record Tally(
        LightClass light,
        Estimate irradiance,
        Estimate pupilSeen,
        List<Estimate> cells,
        SortedMap<Reflector, Estimate> by,
        SortedMap<Reflector, Double> incidences,
        Optional<ExampleRay> example) {

    /** Copies the collections. */
    public Tally {
        cells = List.copyOf(cells);
        by = Collections.unmodifiableSortedMap(new TreeMap<>(by));
        incidences = Collections.unmodifiableSortedMap(new TreeMap<>(incidences));
    }

    /**
     * A ray that carried light.
     *
     * @param onPupil where it left the pupil, mm
     * @param onReceiver where it arrived, mm
     */
    public record ExampleRay(Vector3D onPupil, Vector3D onReceiver) {}

    /**
     * Nothing measured yet.
     *
     * @param largest no sample of the receiver is larger
     * @param largestOfCell no sample of a cell is larger
     */
    public static Tally none(LightClass light, double largest, int cells, double largestOfCell) {
        return new Tally(
                light,
                Estimate.none(largest),
                Estimate.none(1),
                Collections.nCopies(cells, Estimate.none(largestOfCell)),
                new TreeMap<>(),
                new TreeMap<>(),
                Optional.empty());
    }

    /** Both together; independent samples of the same receiver and class. */
    public Tally and(Tally other) {
        List<Estimate> bothCells = IntStream.range(0, cells.size())
                .mapToObj(i -> cells.get(i).and(other.cells.get(i)))
                .toList();
        TreeMap<Reflector, Estimate> both = new TreeMap<>();
        for (Map.Entry<Reflector, Estimate> mine : by.entrySet()) {
            both.put(mine.getKey(), mine.getValue().and(zeros(other, mine.getKey())));
        }
        for (Map.Entry<Reflector, Estimate> theirs : other.by.entrySet()) {
            both.computeIfAbsent(theirs.getKey(), key -> zeros(this, key).and(theirs.getValue()));
        }
        return new Tally(
                light,
                irradiance.and(other.irradiance),
                pupilSeen.and(other.pupilSeen),
                bothCells,
                both,
                bothIncidences(other),
                example.isPresent() ? example : other.example);
    }

    /** What a tally says of a reflector that it never met: as many zeros as it has samples. */
    private static Estimate zeros(Tally tally, Reflector key) {
        Estimate known = tally.by.get(key);
        return known != null ? known : new Estimate(tally.irradiance.samples(), 0, 0, tally.irradiance.largest());
    }

    private SortedMap<Reflector, Double> bothIncidences(Tally other) {
        SortedMap<Reflector, Double> both = new TreeMap<>(incidences);
        other.incidences.forEach((key, theirs) -> both.merge(key, theirs, (mine, added) -> {
            double weight = weight(key);
            double more = other.weight(key);
            return (mine * weight + added * more) / (weight + more);
        }));
        return both;
    }

    private double weight(Reflector key) {
        return by.get(key).mean() * by.get(key).samples();
    }
}
