package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Range;
import darkrim.layout.form.Wording;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The window of a file.
 *
 * @param band over which its values are averaged
 * @param findings receives what is wrong
 */
record WindowBuilder(Optional<Band> band, Findings findings) {
    private static final String CODE = "window";

    /** The window; empty, with a finding, if it cannot be as described or is not where it can be followed. */
    Optional<BeamSpec.WindowSpec> build(Fields fields, BeamSpec.PupilSpec pupil, Optional<BeamSpec.FieldSpec> field) {
        SpectralMean means = new SpectralMean(band, findings);
        OptionalDouble index = means.of(fields, "n", BeamKeys.INDEX_RANGE);
        OptionalDouble internal = means.of(fields, "internal_transmittance", BeamKeys.INTERNAL_RANGE);
        Optional<OptionalDouble> lower = face(means, fields, "reflectance_below");
        Optional<OptionalDouble> upper = face(means, fields, "reflectance_above");
        double bottom = fields.number("at_height");
        double thickness = fields.number("thickness");
        boolean sound = check(fields, bottom, bottom + thickness, pupil, field);
        boolean whole = index.isPresent()
                && internal.isPresent()
                && lower.map(OptionalDouble::isPresent).orElse(true)
                && upper.map(OptionalDouble::isPresent).orElse(true);
        return sound && whole
                ? Optional.of(new BeamSpec.WindowSpec(
                        fields.text("name"),
                        bottom,
                        thickness,
                        index.getAsDouble(),
                        lower.map(OptionalDouble::getAsDouble),
                        upper.map(OptionalDouble::getAsDouble),
                        internal.getAsDouble(),
                        fields.place()))
                : Optional.empty();
    }

    private static Optional<OptionalDouble> face(SpectralMean means, Fields fields, String key) {
        Range range = BeamKeys.FACE_RANGE;
        return fields.has(key) ? Optional.of(means.of(fields, key, range)) : Optional.empty();
    }

    private boolean check(
            Fields fields, double bottom, double top, BeamSpec.PupilSpec pupil, Optional<BeamSpec.FieldSpec> field) {
        int before = findings.sorted().size();
        if (pupil.tiltAboutX() != 0 || pupil.tiltAboutY() != 0) {
            findings.error(
                    CODE,
                    fields.place(),
                    "light through a window from a tilted pupil is not followed, expected a pupil without tilt");
        }
        if (!(pupil.centre().getZ() > top)) {
            findings.error(
                    CODE,
                    fields.place("at_height"),
                    "the window reaches up to " + Wording.number(top) + " mm and the pupil lies at "
                            + Wording.number(pupil.centre().getZ()) + " mm, expected the pupil above the window");
        }
        if (field.isPresent() && field.get().centre().getZ() > bottom) {
            findings.error(
                    CODE,
                    fields.place("at_height"),
                    "the field at " + Wording.number(field.get().centre().getZ())
                            + " mm lies above the window's lower face at " + Wording.number(bottom)
                            + " mm, which is not followed, expected it below the window");
        }
        return findings.sorted().size() == before;
    }
}
