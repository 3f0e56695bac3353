package darkrim.study;

import darkrim.light.Obstruction;
import darkrim.light.ObstructionSampler;
import darkrim.light.Receiver;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Names what lies first in the way from a point to the pupil, so that a verdict can say which part to move. */
final class PupilHiders {
    /** What hides a thousandth of the pupil is met by some sixteen lines. */
    private static final int LINES = 16_384;
    /** The names of more are of no help; 'seen-from' lists them all. */
    private static final int NAMED = 3;
    /** Names do not change with the seed of a layout. */
    private static final long SEED = 1;

    private PupilHiders() {}

    /**
     * What hides some of the pupil from a point, what hides most first; at most three names, of which one may be {@code field limit}.
     *
     * @param scene the scene
     * @param tree the tree over its facets
     * @param surface the surface, of which curved ones are not looked at
     * @param point a point of it, mm
     */
    static List<String> of(Scene scene, FacetTree tree, Surface surface, Vector3D point) {
        if (scene.beam().window().isPresent()) {
            return List.of();
        }
        return SurfacePoint.lifted(scene, tree, surface, point)
                .map(at -> names(scene, lines(scene, tree, surface, at)))
                .orElse(List.of());
    }

    private static Obstruction lines(Scene scene, FacetTree tree, Surface surface, SurfacePoint.Lifted at) {
        return new ObstructionSampler(scene, tree, SEED)
                .batch(new Receiver.AtPoint(surface.name(), at.position(), at.normal()), 0, LINES);
    }

    private static List<String> names(Scene scene, Obstruction found) {
        Stream<Map.Entry<String, Long>> parts = found.by().entrySet().stream()
                .map(each ->
                        Map.entry(scene.surfaces().get(each.getKey().surface()).name(), each.getValue()));
        Stream<Map.Entry<String, Long>> field = Optional.of(found.beyondField()).filter(lines -> lines > 0).stream()
                .map(lines -> Map.entry("field limit", lines));
        return Stream.concat(parts, field)
                .sorted(Map.Entry.<String, Long>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey)
                .distinct()
                .limit(NAMED)
                .toList();
    }
}
