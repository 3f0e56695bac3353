package darkrim.present.picture;

import darkrim.scene.Scene;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Verdict;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What a picture shows.
 *
 * @param scene the scene
 * @param shown numbers of the surfaces that are drawn
 * @param light which light is shown; empty for plain grey parts
 * @param maps a map of every surface, by number
 * @param scale the colours
 * @param perRelative what relative values are multiplied with to be in the unit of the scale
 * @param verdicts of the surfaces that are outlined, by number
 * @param section where parts are cut, if they are
 * @param paths ways of light that are drawn, each from the pupil to a receiver, mm
 */
public record Subject(
        Scene scene,
        BitSet shown,
        Optional<LightKind> light,
        List<SurfaceMap> maps,
        ColourScale scale,
        double perRelative,
        Map<Integer, Verdict> verdicts,
        Optional<Section> section,
        List<List<Vector3D>> paths) {
    /** Copies the collections. */
    public Subject {
        shown = (BitSet) shown.clone();
        maps = List.copyOf(maps);
        verdicts = Map.copyOf(verdicts);
        paths = paths.stream().map(List::copyOf).toList();
    }

    @Override
    public BitSet shown() {
        return (BitSet) shown.clone();
    }

    /** The facets that are drawn: those of which a side belongs to a surface that is shown. */
    int[] facets() {
        IntPredicate drawn = f -> shown.get(scene.frontSurface(f))
                || (scene.backSurface(f) != Scene.INSIDE && shown.get(scene.backSurface(f)));
        return IntStream.range(0, scene.facetCount()).filter(drawn).toArray();
    }

    /** The corners of what is drawn, mm: what a camera must see. */
    public List<Vector3D> corners() {
        return IntStream.of(facets())
                .mapToObj(f -> List.of(scene.corner(f, 0), scene.corner(f, 1), scene.corner(f, 2)))
                .flatMap(List::stream)
                .distinct()
                .toList();
    }

    /** The colour of a place of a surface; empty where no light is shown. */
    int colour(int surface, int facet, double x, double y, double z) {
        SurfaceMap map = maps.get(surface);
        int cell = map.cells().cellAt(facet, x, y, z);
        return scale.argb(map.value(light.orElseThrow(), cell) * perRelative);
    }
}
