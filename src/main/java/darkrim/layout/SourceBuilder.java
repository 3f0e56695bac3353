package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.geom.Outline;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * The sources of light of a file.
 *
 * @param findings receives what is wrong
 */
record SourceBuilder(Findings findings) {
    private static final String CODE = "source";
    private static final double LEVEL = 90;

    /**
     * Those that could be read, in the order of the file.
     *
     * @param beam the beam, if it could be read: stars come through its pupil
     */
    List<SourceSpec> sources(Fields file, Optional<BeamSpec> beam) {
        List<SourceSpec> sources = new ArrayList<>();
        if (file.find("sources").orElse(null) instanceof Value.Named named) {
            named.values().forEach((name, value) -> {
                if (value.isWhole()) {
                    source(name, (Fields) value, beam).ifPresent(sources::add);
                }
            });
        }
        return sources;
    }

    private Optional<? extends SourceSpec> source(String name, Fields fields, Optional<BeamSpec> beam) {
        return switch (fields.variant()) {
            case "star" -> star(name, fields, beam);
            case "distant" -> distant(name, fields, fields.number("diameter"));
            default -> throw new IllegalStateException("nothing reads the kind of source '" + fields.variant() + "'");
        };
    }

    private Optional<SourceSpec.Star> star(String name, Fields fields, Optional<BeamSpec> beam) {
        Vector2D at = OutlineBuilder.point(fields.list("at"));
        double defocus = fields.number("defocus");
        double lowest = beam.map(known -> known.pupil().lowest()).orElse(Double.POSITIVE_INFINITY);
        if (defocus >= lowest) {
            findings.error(
                    CODE,
                    fields.place("defocus"),
                    "the light of the star comes together at " + Wording.number(defocus)
                            + " mm, at or above the pupil, which reaches down to " + Wording.number(lowest)
                            + " mm; expected a focus below it");
            return Optional.empty();
        }
        return Optional.of(new SourceSpec.Star(
                name,
                Vector3D.of(at.getX(), at.getY(), defocus),
                fields.find("flux").map(Fields::number),
                fields.place()));
    }

    private Optional<SourceSpec.Distant> distant(String name, Fields fields, double diameter) {
        double offAxis = fields.number("off_axis");
        if (offAxis + diameter / 2 >= LEVEL) {
            findings.error(
                    CODE,
                    fields.place("off_axis"),
                    "the body reaches out to " + Wording.number(offAxis + diameter / 2)
                            + " deg from the z axis, expected all of it above the focal plane, at less than 90 deg");
            return Optional.empty();
        }
        Optional<SourceSpec.Entrance> entrance =
                fields.ifGiven("entrance", SourceBuilder.this::entrance).flatMap(found -> found);
        if (fields.has("entrance") && entrance.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new SourceSpec.Distant(
                name,
                offAxis,
                fields.number("azimuth"),
                diameter,
                fields.find("irradiance").map(Fields::number),
                entrance,
                fields.place()));
    }

    private Optional<SourceSpec.Entrance> entrance(Fields fields) {
        Optional<Outline> outline = fields.variant().equals("disc")
                ? new OutlineBuilder(findings).ring(fields)
                : Optional.of(OutlineBuilder.rectangle(List.of(fields.number("width"), fields.number("height"))));
        Vector2D shift = OutlineBuilder.point(fields.list("shift"));
        return outline.map(shape ->
                new SourceSpec.Entrance(shape, Vector3D.of(shift.getX(), shift.getY(), fields.number("at_height"))));
    }
}
