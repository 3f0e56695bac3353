package darkrim.layout;

import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import java.util.ArrayList;
import java.util.List;

/** The requirements of a file. */
final class RequirementBuilder {
    private RequirementBuilder() {}

    /** Those that could be read, in the order of the file. */
    static List<Requirement> requirements(Fields file) {
        List<Requirement> requirements = new ArrayList<>();
        if (file.find("requirements").orElse(null) instanceof Value.Named named) {
            named.values().forEach((name, value) -> {
                if (value.isWhole()) {
                    Fields fields = (Fields) value;
                    requirements.add(new Requirement(
                            name,
                            fields.text("surfaces"),
                            condition(fields),
                            named.places().get(name)));
                }
            });
        }
        return requirements;
    }

    private static Requirement.Condition condition(Fields fields) {
        if (fields.has("pupil_seen")) {
            return new Requirement.PupilSeen(fields.fields("pupil_seen").number("at_least"));
        }
        if (fields.has("once_reflected")) {
            return fields.find("once_reflected").orElseThrow() instanceof Fields limit
                    ? limit(Requirement.LightClass.ONCE_REFLECTED, limit)
                    : new Requirement.AtMost(Requirement.LightClass.ONCE_REFLECTED, 0, Requirement.Per.SURFACE);
        }
        return fields.find("direct").orElseThrow() instanceof Fields limit
                ? limit(Requirement.LightClass.DIRECT, limit)
                : new Requirement.NoDirect();
    }

    private static Requirement.Condition limit(Requirement.LightClass light, Fields fields) {
        Requirement.Per per = fields.text("per").equals("cell") ? Requirement.Per.CELL : Requirement.Per.SURFACE;
        return new Requirement.AtMost(light, fields.number("at_most"), per);
    }
}
