package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The requirements of a file.
 *
 * @param cooled whether the layout is cooled
 * @param findings receives what is wrong
 */
record RequirementBuilder(boolean cooled, Findings findings) {
    /** Those that could be read, in the order of the file. */
    List<Requirement> requirements(Fields file) {
        List<Requirement> requirements = new ArrayList<>();
        if (file.find("requirements").orElse(null) instanceof Value.Named named) {
            named.values().forEach((name, value) -> {
                Fields fields = (Fields) value;
                if (keysFit(fields) && fields.isWhole()) {
                    condition(fields)
                            .ifPresent(condition -> requirements.add(new Requirement(
                                    name,
                                    surfaces(fields),
                                    condition,
                                    named.places().get(name))));
                }
            });
        }
        return requirements;
    }

    /** A clearance has two sides, all else one. */
    private boolean keysFit(Fields fields) {
        boolean both = fields.has("surfaces") && fields.has("clearance");
        if (both) {
            findings.error(
                    "requirement-keys",
                    fields.place("surfaces"),
                    "a clearance is between two sides, expected 'between' in place of 'surfaces'");
        }
        return !both;
    }

    private static String surfaces(Fields fields) {
        return fields.has("clearance") ? fields.texts("between").get(0) : fields.text("surfaces");
    }

    private Optional<Requirement.Condition> condition(Fields fields) {
        if (fields.has("clearance")) {
            return clearance(fields);
        }
        if (fields.has("pupil_seen")) {
            return Optional.of(
                    new Requirement.PupilSeen(fields.fields("pupil_seen").number("at_least")));
        }
        if (fields.has("once_reflected")) {
            return Optional.of(
                    fields.find("once_reflected").orElseThrow() instanceof Fields limit
                            ? limit(Requirement.LightClass.ONCE_REFLECTED, limit)
                            : new Requirement.AtMost(
                                    Requirement.LightClass.ONCE_REFLECTED, 0, Requirement.Per.SURFACE));
        }
        return Optional.of(
                fields.find("direct").orElseThrow() instanceof Fields limit
                        ? limit(Requirement.LightClass.DIRECT, limit)
                        : new Requirement.NoDirect());
    }

    private Optional<Requirement.Condition> clearance(Fields fields) {
        Optional<Requirement.Lowering> lowering = Optional.empty();
        if (fields.has("while_lowered")) {
            lowering = lowering(fields.fields("while_lowered"));
            if (lowering.isEmpty()) {
                return Optional.empty();
            }
        }
        Requirement.Shapes shapes = Requirement.Shapes.BOTH;
        if (fields.has("shape")) {
            shapes = Requirement.Shapes.valueOf(fields.text("shape").toUpperCase(Locale.ROOT));
            if (!cooled && shapes != Requirement.Shapes.WARM) {
                findings.error(
                        "cooldown",
                        fields.place("shape"),
                        "the layout has no cold shape, expected 'cooldown' in it, or no 'shape' here");
                return Optional.empty();
            }
        }
        return Optional.of(new Requirement.Clearance(
                fields.texts("between").get(1), fields.fields("clearance").number("at_least"), lowering, shapes));
    }

    private Optional<Requirement.Lowering> lowering(Fields fields) {
        List<Double> way = fields.numbers("direction");
        Vector3D direction = Vector3D.of(way.get(0), way.get(1), way.get(2));
        if (direction.norm() == 0) {
            findings.error(
                    "axis",
                    fields.place("direction"),
                    "the way [0, 0, 0] has no direction, expected one that is not 0");
            return Optional.empty();
        }
        return Optional.of(new Requirement.Lowering(fields.text("part"), fields.number("from"), direction.normalize()));
    }

    private static Requirement.AtMost limit(Requirement.LightClass light, Fields fields) {
        Requirement.Per per = fields.text("per").equals("cell") ? Requirement.Per.CELL : Requirement.Per.SURFACE;
        return new Requirement.AtMost(light, fields.number("at_most"), per);
    }
}
