package darkrim.study.star;

import darkrim.diagnostic.Finding;
import darkrim.layout.Layout;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a star scan found.
 *
 * @param layout the layout
 * @param scene the scene
 * @param settings what was asked for
 * @param seed seed of the random numbers
 * @param receivers surfaces on which light is counted
 * @param region positions of the star
 * @param cells the region in squares, in order
 * @param bound how large a sampled share may be
 * @param zone where the level is, or may be, exceeded
 * @param named the stars that the layout names
 * @param refined whether stars were aimed at all that could throw their light, and all cells that ask for it were split down to the finest
 * @param beyond whether stars outside the region, which was not asked for as such, might send light too
 * @param stopped whether the work was stopped before its end
 * @param warnings what deserves attention
 */
public record StarScanResult(
        Layout layout,
        Scene scene,
        StarScanSettings settings,
        long seed,
        List<Surface> receivers,
        StarRegion region,
        List<StarCell> cells,
        StarBound bound,
        AvoidanceZone zone,
        List<NamedStar> named,
        boolean refined,
        boolean beyond,
        boolean stopped,
        List<Finding> warnings) {
    /** Copies the lists. */
    public StarScanResult {
        receivers = List.copyOf(receivers);
        cells = List.copyOf(cells);
        named = List.copyOf(named);
        warnings = List.copyOf(warnings);
    }

    /** The position with the most once-reflected light. */
    public Optional<StarPosition> brightest() {
        return cells.stream()
                .map(StarCell::brightest)
                .flatMap(Optional::stream)
                .max(Comparator.comparingDouble(StarPosition::share));
    }

    /** Number of positions that were looked at. */
    public int positions() {
        return cells.stream().mapToInt(cell -> cell.positions().size()).sum();
    }

    /** Positions at which even the most samples that are taken cannot say that the level is kept, whatever they find. */
    public long beyondSamples() {
        return sampled()
                .filter(position -> bound.needed(position, settings.level()) > settings.mostSamples())
                .count();
    }

    /** Cells of the pupil along each coordinate that would do at every position; as far as the level is kept there. */
    public long acrossNeeded() {
        long needed = sampled()
                .mapToLong(position -> bound.needed(position, settings.level()))
                .max()
                .orElse(0);
        return (long) Math.ceil(Math.sqrt((double) needed / StarScanSettings.MOST_TIMES));
    }

    private Stream<StarPosition> sampled() {
        return cells.stream().map(StarCell::positions).flatMap(List::stream);
    }
}
