package darkrim.study;

import darkrim.layout.Requirement;

/** What the margin of a requirement is measured in; the one place that says so, for every study. */
public enum MarginUnit {
    /** No direct light, and the pupil: how far the light, or its loss, is away; a clearance: how much it is wider than asked. */
    MILLIMETRES("mm"),
    /** A limit on light: the limit less the value. */
    RELATIVE_IRRADIANCE("relative irradiance");

    private final String words;

    MarginUnit(String words) {
        this.words = words;
    }

    /** The unit of a requirement's margin. */
    public static MarginUnit of(Requirement requirement) {
        return requirement.condition() instanceof Requirement.AtMost ? RELATIVE_IRRADIANCE : MILLIMETRES;
    }

    /** As it stands beside a number or in the head of a column. */
    public String words() {
        return words;
    }
}
