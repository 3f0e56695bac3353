package darkrim.view.work;

import darkrim.layout.SourceSpec;
import darkrim.light.Reflector;
import darkrim.scene.DistantBody;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.trace.FacetTree;
import darkrim.view.parts.Stage;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The light of a distant source on the surfaces of a layout, as far as it is known by now: sampled, not judged. Values are relative to the
 * irradiance of a plane that faces the source. Immutable.
 *
 * @param source the source
 * @param scene the scene in its light
 * @param tree the tree over its facets
 * @param surfaces what is known of each surface, by name
 * @param maps maps of surfaces by name, as fine as they are by now
 * @param progress how far the means are, 0 to 1; with 1 nothing more of them is to come
 */
public record SourceFacts(
        SourceSpec.Distant source,
        Scene scene,
        FacetTree tree,
        Map<String, SurfaceFacts> surfaces,
        Map<String, SurfaceMap> maps,
        double progress) {
    /** Copies the maps. */
    public SourceFacts {
        surfaces = Map.copyOf(surfaces);
        maps = Map.copyOf(maps);
    }

    /** Nothing is known yet. Builds the tree, which takes a while where there are very many facets. */
    static SourceFacts unknown(Stage stage, SourceSpec.Distant source) {
        Scene lit = DistantBody.of(source).over(stage.scene());
        FacetTree tree = FacetTree.build(lit.corners(), lit.copyPlanes(), lit.bound());
        return new SourceFacts(source, lit, tree, Map.of(), Map.of(), 0);
    }

    /** What values that are sampled in the scene are multiplied with to be relative to the source. */
    double perRelative() {
        return 1 / DistantBody.facing(scene);
    }

    /** With a first look at whole surfaces. */
    SourceFacts glanced(List<SurfaceMap> means) {
        Map<String, SurfaceFacts> known = new HashMap<>();
        for (SurfaceMap map : means) {
            SurfaceMap here = map.times(perRelative());
            known.put(
                    map.cells().surface().name(),
                    new SurfaceFacts(
                            Reading.of(here, LightKind.DIRECT, 0),
                            Reading.of(here, LightKind.ONCE_REFLECTED, 0),
                            List.of(),
                            List.of()));
        }
        return new SourceFacts(source, scene, tree, known, maps, progress);
    }

    /** With the means of all surfaces. */
    SourceFacts found(CheckedLight light) {
        Map<String, SurfaceFacts> known = new HashMap<>();
        double reach = scene.reach();
        for (Surface surface : scene.surfaces()) {
            CheckedLight.OnSurface on = light.surfaces().get(surface.index());
            known.put(
                    surface.name(),
                    new SurfaceFacts(
                            Reading.of(on.direct().times(perRelative())),
                            Reading.of(on.reflected().times(perRelative())),
                            List.of(),
                            on.strongest().stream().map(this::path).toList(),
                            on.ray().isEmpty() ? List.of() : List.of(ray(on.ray(), reach))));
        }
        return new SourceFacts(source, scene, tree, known, maps, 1);
    }

    private PathFact path(Reflector by) {
        return new PathFact(scene.surfaces().get(by.surface()).name(), by.part().word(), Double.NaN, Reading.UNKNOWN);
    }

    private static Judged.Line ray(List<Vector3D> ends, double reach) {
        return new Judged.Line(DistantBody.drawn(reach, ends.get(0), ends.get(1)), ends.get(1));
    }

    SourceFacts progressed(double share) {
        return new SourceFacts(source, scene, tree, surfaces, maps, share);
    }

    /** With maps that are new, or finer than before, in the unit of the source; those of another scene are left out. */
    SourceFacts mapped(List<SurfaceMap> finer) {
        Map<String, SurfaceMap> all = new HashMap<>(maps);
        finer.stream()
                .filter(map -> map.cells().isOf(scene))
                .forEach(map -> all.put(map.cells().surface().name(), map));
        return new SourceFacts(source, scene, tree, surfaces, all, progress);
    }
}
