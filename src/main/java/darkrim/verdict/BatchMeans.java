package darkrim.verdict;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Tally;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The means of the single batches of samples. Two layouts that were sampled with the same random numbers differ batch by batch by much less
 * than the values scatter (common random numbers: Law, Simulation Modeling and Analysis, ch. 11). Grows while it is filled by one thread.
 */
public final class BatchMeans {
    private final Map<LightClass, Map<Surface, List<Tally>>> tallies = new EnumMap<>(LightClass.class);

    /** Nothing is kept yet. */
    BatchMeans() {
        for (LightClass light : LightClass.values()) {
            tallies.put(light, new HashMap<>());
        }
    }

    void add(Surface surface, LightClass light, Tally batch) {
        tallies.get(light).computeIfAbsent(surface, key -> new ArrayList<>()).add(batch);
    }

    /**
     * The mean of each batch, in the order of the batches; empty where none was kept.
     *
     * @param surface the surface
     * @param light class of light
     * @param cell number of the cell, or {@link Outcome#WHOLE}
     */
    public List<Double> of(Surface surface, LightClass light, int cell) {
        return tallies.get(light).getOrDefault(surface, List.of()).stream()
                .map(tally -> cell == Outcome.WHOLE
                        ? tally.irradiance()
                        : tally.cells().get(cell))
                .map(Estimate::mean)
                .toList();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof BatchMeans means && tallies.equals(means.tallies);
    }

    @Override
    public int hashCode() {
        return tallies.hashCode();
    }
}
