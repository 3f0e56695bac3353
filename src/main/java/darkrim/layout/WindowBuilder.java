package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Wording;
import java.util.Optional;

/**
 * The window of a file. Its values are the same over the band: light goes through it and off finishes, and a mean of products is not the
 * product of means; nor does light of a mean index land where that of the greatest and least index does.
 *
 * @param findings receives what is wrong
 */
record WindowBuilder(Findings findings) {
    private static final String CODE = "window";

    /** The window; empty, with a finding, if it cannot be as described or is not where it can be followed. */
    Optional<BeamSpec.WindowSpec> build(Fields fields, BeamSpec.PupilSpec pupil, Optional<BeamSpec.FieldSpec> field) {
        double bottom = fields.number("at_height");
        double thickness = fields.number("thickness");
        return check(fields, bottom, bottom + thickness, pupil, field)
                ? Optional.of(new BeamSpec.WindowSpec(
                        fields.text("name"),
                        bottom,
                        thickness,
                        fields.number("n"),
                        fields.find("reflectance_below").map(Fields::number),
                        fields.find("reflectance_above").map(Fields::number),
                        fields.number("internal_transmittance"),
                        fields.place()))
                : Optional.empty();
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
