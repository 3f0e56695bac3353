package darkrim.view.window;

import darkrim.present.picture.ColourScale;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.look.ScaleChoice;
import darkrim.view.work.Facts;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** The scale that a look asks for. */
final class Scales {
    private Scales() {}

    /** Over the range chosen by hand, or over the values of all surfaces, hidden ones too: hiding changes no colour. */
    static ColourScale of(Look look, Optional<Facts> facts) {
        ColourScale.Spacing spacing =
                look.scale().logarithmic() ? ColourScale.Spacing.LOGARITHMIC : ColourScale.Spacing.LINEAR;
        Optional<ScaleChoice.Range> range = look.scale().range();
        String quantity = "relative irradiance";
        if (range.isPresent() && (range.get().low() > 0 || !look.scale().logarithmic())) {
            return new ColourScale(spacing, range.get().low(), range.get().high(), quantity, "");
        }
        DoubleStream values = facts.stream()
                .flatMap(known -> known.surfaces().values().stream())
                .mapToDouble(known -> known.of(look.light() == Light.NONE ? Light.DIRECT : look.light())
                        .value());
        return ColourScale.around(spacing, values, quantity, "");
    }
}
