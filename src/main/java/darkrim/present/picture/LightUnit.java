package darkrim.present.picture;

import darkrim.layout.SourceSpec;
import darkrim.present.Figures;
import darkrim.present.Printable;
import darkrim.scene.DistantBody;
import darkrim.scene.Scene;
import java.util.Optional;

/**
 * In what the light of a picture is given.
 *
 * @param quantity what is shown, such as {@code irradiance}
 * @param unit its unit, such as {@code W/m2}; empty for a ratio
 * @param perRelative what relative values of the scene are multiplied with to be in the unit
 * @param words what 1 stands for, a sentence; empty where the unit says it
 */
public record LightUnit(String quantity, String unit, double perRelative, String words) {
    /**
     * Light of a distant source, or of the beam.
     *
     * @param source the source; empty for the beam
     * @param lit the scene in its light
     */
    public static LightUnit of(Optional<SourceSpec.Distant> source, Scene lit) {
        return source.map(each -> ofSource(each, lit)).orElseGet(() -> ofBeam(lit));
    }

    /** Light of the beam: in W/m2 where its radiance is known, otherwise relative to the unobstructed pupil. */
    public static LightUnit ofBeam(Scene scene) {
        return scene.beam().radiance().isPresent()
                ? new LightUnit("irradiance", "W/m2", LightChoice.perRelative(scene), "")
                : new LightUnit(
                        "relative irradiance",
                        "",
                        1,
                        "Relative irradiance 1 is what the unobstructed pupil gives at the origin, facing +z.");
    }

    /**
     * Light of a distant source: relative to its irradiance on a plane that faces it.
     *
     * @param source the source
     * @param lit the scene in its light
     */
    public static LightUnit ofSource(SourceSpec.Distant source, Scene lit) {
        String known = source.irradiance()
                .map(irradiance -> ", " + Figures.limit(irradiance) + " W/m2")
                .orElse("");
        return new LightUnit(
                "relative irradiance",
                "",
                1 / DistantBody.facing(lit),
                "Relative irradiance 1 is what " + Printable.of(source.name()) + " gives a plane that faces it" + known
                        + ".");
    }
}
