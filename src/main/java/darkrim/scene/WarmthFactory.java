package darkrim.scene;

import darkrim.assembly.Assembly;
import darkrim.layout.FinishSpec;
import darkrim.layout.Layout;
import darkrim.layout.WarmthSpec;
import java.util.Optional;

/** Makes the warmth of a scene from a layout and its assembly. */
public final class WarmthFactory {
    private WarmthFactory() {}

    /**
     * What is warm; empty where the layout says nothing of it.
     *
     * @param layout the layout
     * @param assembly its assembly, made without errors
     * @param scene the scene made of both
     */
    public static Optional<Warmth> of(Layout layout, Assembly assembly, Scene scene) {
        return layout.warmth()
                .map(spec -> new Warmth(
                        scene,
                        surface -> assembly.kelvinOf(surface.name()),
                        surface -> Optional.ofNullable(
                                        layout.finishes().get(surface.finish().name()))
                                .flatMap(FinishSpec::emissivity)
                                .orElse(Double.POSITIVE_INFINITY),
                        spec.surroundings()
                                .map(kelvin -> new Warmth.Emitter(kelvin, 1))
                                .orElse(Warmth.Emitter.NONE),
                        spec.pupil().map(WarmthFactory::emitter).orElse(Warmth.Emitter.NONE),
                        spec.from(),
                        spec.to()));
    }

    private static Warmth.Emitter emitter(WarmthSpec.WarmPupil pupil) {
        return new Warmth.Emitter(pupil.kelvin(), pupil.emissivity());
    }
}
