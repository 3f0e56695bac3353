package darkrim.view.window;

import darkrim.present.picture.ColourScale;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.look.ScaleChoice;
import darkrim.view.work.Content;
import darkrim.view.work.ViewModel;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The scale that a look asks for. */
final class Scales {
    /** A mean this many standard errors above 0 is no chance. */
    private static final double CERTAIN = 4;

    private Scales() {}

    /** The scale of everything that a window shows: of both layouts where two stand side by side. */
    static ColourScale of(ViewModel model) {
        return of(model.look(), model.content(), model.besideContent());
    }

    /** Over the range chosen by hand, or over the values of all surfaces, hidden ones too: hiding changes no colour. */
    static ColourScale of(Look look, Content... contents) {
        ColourScale.Spacing spacing =
                look.scale().logarithmic() ? ColourScale.Spacing.LOGARITHMIC : ColourScale.Spacing.LINEAR;
        Optional<ScaleChoice.Range> range = look.scale().range();
        String quantity = "relative irradiance";
        if (range.isPresent() && (range.get().low() > 0 || !look.scale().logarithmic())) {
            return new ColourScale(spacing, range.get().low(), range.get().high(), quantity, "");
        }
        Light light = look.light() == Light.NONE ? Light.DIRECT : look.light();
        DoubleStream means = Stream.of(contents)
                .flatMap(content -> content.lighting(look.source()).stream())
                .flatMap(known -> known.surfaces().values().stream())
                .mapToDouble(known -> known.of(light).value());
        // Of cells only the largest counts, and what of it is no chance: the smallest of many are chance.
        DoubleStream largest = look.cells()
                ? Stream.of(contents)
                        .flatMap(content -> content.maps(look.source()).values().stream())
                        .mapToDouble(map -> largest(map, kind(light)))
                : DoubleStream.empty();
        DoubleStream values = DoubleStream.concat(
                DoubleStream.concat(means, largest),
                Stream.of(contents).flatMapToDouble(content -> seen(content, look, light)));
        return ColourScale.around(spacing, values, quantity, "");
    }

    /** Of surfaces that the chosen point sees, the means that are no chance: otherwise weakly lit ones would be black. */
    private static DoubleStream seen(Content content, Look look, Light light) {
        return content.seen().stream()
                .filter(seen ->
                        seen.light() == light && seen.lighting().source().equals(look.source()))
                .flatMap(seen -> seen.maps().values().stream())
                .filter(map -> map.mean(light.kind()) > CERTAIN * map.meanError(light.kind()))
                .mapToDouble(map -> map.mean(light.kind()));
    }

    private static double largest(SurfaceMap map, LightKind kind) {
        return IntStream.of(map.cells().filled())
                .mapToDouble(cell -> map.value(kind, cell) - 2 * map.error(kind, cell))
                .filter(value -> !Double.isNaN(value))
                .max()
                .orElse(Double.NaN);
    }

    /** The light of a class in a map. */
    static LightKind kind(Light light) {
        return light.kind();
    }
}
