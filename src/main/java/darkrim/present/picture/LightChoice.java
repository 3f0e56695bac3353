package darkrim.present.picture;

import darkrim.present.picture.ColourScale.Spacing;
import darkrim.scene.Scene;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceMap;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Which light is shown, and how its colours are chosen.
 *
 * @param light the light; empty for plain grey parts
 * @param spacing how values are spread over the colours
 * @param range the ends of the scale by hand; found from the values where it is empty
 */
public record LightChoice(Optional<LightKind> light, Spacing spacing, Optional<Range> range) {
    /**
     * A range of values.
     *
     * @param least value of the darkest colour
     * @param most value of the lightest colour
     */
    public record Range(double least, double most) {}

    /** What relative values are multiplied with to be in the unit of the scale: W/m2 where the radiance of the beam is known. */
    public static double perRelative(Scene scene) {
        return scene.beam().radiance().isPresent()
                ? scene.beam().radiance().getAsDouble() * scene.referenceIrradiance()
                : 1;
    }

    /** The scale for some maps. */
    public ColourScale scale(LightUnit in, List<SurfaceMap> maps) {
        if (range.isPresent()) {
            return new ColourScale(spacing, range.get().least(), range.get().most(), in.quantity(), in.unit());
        }
        DoubleStream values = light.map(kind -> maps.stream()
                        .flatMapToDouble(map -> IntStream.of(map.cells().filled())
                                .mapToDouble(cell -> map.value(kind, cell) * in.perRelative())))
                .orElse(DoubleStream.empty());
        return ColourScale.around(spacing, values, in.quantity(), in.unit());
    }
}
