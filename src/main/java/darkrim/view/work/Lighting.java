package darkrim.view.work;

import darkrim.present.picture.LightChoice;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.view.parts.Stage;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A layout in the light of its beam, or of a source beside it, with what is known of that light.
 *
 * @param source name of the source; empty for the beam
 * @param scene the scene in this light
 * @param tree the tree over its facets
 * @param perRelative what values that are sampled in the scene are multiplied with to be relative to the source; 1 for the beam
 * @param watts how many W/m2 a value of 1 stands for, where that is known
 * @param surfaces what is known of each surface, by name
 */
public record Lighting(
        Optional<String> source,
        Scene scene,
        FacetTree tree,
        double perRelative,
        OptionalDouble watts,
        Map<String, SurfaceFacts> surfaces) {
    /** Copies the map. */
    public Lighting {
        surfaces = Map.copyOf(surfaces);
    }

    /** The light of the beam: relative to the unobstructed pupil at the origin. */
    static Lighting of(Stage stage, Optional<Facts> facts) {
        Scene scene = stage.scene();
        OptionalDouble watts = scene.beam().radiance().isPresent()
                ? OptionalDouble.of(LightChoice.perRelative(scene))
                : OptionalDouble.empty();
        return new Lighting(
                Optional.empty(),
                scene,
                stage.tree(),
                1,
                watts,
                facts.map(Facts::surfaces).orElse(Map.of()));
    }

    /** The light of a source: relative to what it gives a plane that faces it. */
    static Lighting of(SourceFacts found) {
        return new Lighting(
                Optional.of(found.source().name()),
                found.scene(),
                found.tree(),
                found.perRelative(),
                found.source().irradiance().map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                found.surfaces());
    }

    /** A value in letters, in W/m2 as well where that is known. */
    public String words(Reading reading) {
        return reading.words(watts);
    }
}
