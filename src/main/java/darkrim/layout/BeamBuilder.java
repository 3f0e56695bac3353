package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.geom.Outline;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Wording;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * The beam of a file.
 *
 * @param findings receives what is wrong
 */
record BeamBuilder(Findings findings) {
    /** The beam; empty, with a finding, if the pupil or the field cannot be as described. */
    Optional<BeamSpec> build(Fields beam) {
        Optional<BeamSpec.PupilSpec> pupil = pupil(beam.fields("pupil"));
        Optional<BeamSpec.FieldSpec> field = beam.has("field") ? field(beam.fields("field"), pupil) : Optional.empty();
        if (pupil.isEmpty() || (beam.has("field") && field.isEmpty())) {
            return Optional.empty();
        }
        Optional<BeamSpec.WindowSpec> window = beam.has("window")
                ? new WindowBuilder(findings).build(beam.fields("window"), pupil.get(), field)
                : Optional.empty();
        if (beam.has("window") && window.isEmpty()) {
            return Optional.empty();
        }
        Optional<Double> radiance = beam.find("radiance").map(Fields::number);
        return Optional.of(new BeamSpec(pupil.get(), field, radiance, window, beam.place()));
    }

    private Optional<BeamSpec.PupilSpec> pupil(Fields fields) {
        List<Double> tilt = fields.numbers("tilt");
        return outline(fields).flatMap(outline -> {
            BeamSpec.PupilSpec pupil = new BeamSpec.PupilSpec(
                    outline, centre(fields, fields.number("distance")), tilt.get(0), tilt.get(1));
            double lowest = pupil.lowest();
            if (lowest <= 0) {
                findings.error(
                        "pupil",
                        fields.place(),
                        "the tilted pupil reaches down to " + Wording.number(lowest)
                                + " mm, expected all of it above the focal plane at 0 mm");
                return Optional.empty();
            }
            return Optional.of(pupil);
        });
    }

    private Optional<BeamSpec.FieldSpec> field(Fields fields, Optional<BeamSpec.PupilSpec> pupil) {
        double height = fields.number("at_height");
        double lowest = pupil.map(BeamSpec.PupilSpec::lowest).orElse(Double.POSITIVE_INFINITY);
        if (height >= lowest) {
            boolean level = lowest == pupil.orElseThrow().centre().getZ();
            findings.error(
                    "field",
                    fields.place("at_height"),
                    "the field at " + Wording.number(height) + " mm lies at or above the pupil"
                            + (level ? " at " : ", which reaches down to ")
                            + Wording.number(lowest) + " mm, expected it below");
            return Optional.empty();
        }
        return outline(fields).map(outline -> new BeamSpec.FieldSpec(outline, centre(fields, height)));
    }

    private Optional<Outline> outline(Fields fields) {
        OutlineBuilder outlines = new OutlineBuilder(findings);
        return switch (fields.variant()) {
            case "disc" -> outlines.ring(fields);
            case "polygon" -> outlines.polygon(fields);
            case "square" -> Optional.of(OutlineBuilder.rectangle(List.of(2 * fields.number("half_width"))));
            default -> Optional.of(OutlineBuilder.rectangle(List.of(fields.number("width"), fields.number("height"))));
        };
    }

    private static Vector3D centre(Fields fields, double height) {
        Vector2D shift = OutlineBuilder.point(fields.list("shift"));
        return Vector3D.of(shift.getX(), shift.getY(), height);
    }
}
