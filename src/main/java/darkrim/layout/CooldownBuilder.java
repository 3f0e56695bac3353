package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import darkrim.material.Material;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The cool-down of a file, and how each part takes part in it. No part of a layout that is cooled stays rigid for want of a material. */
final class CooldownBuilder {
    private static final String CODE = "cooldown";

    private final Findings findings;
    private final MaterialReader materials;
    private final Optional<Cooldown> cooldown;
    private final Place place;
    private final boolean hasDefault;
    private final boolean stated;
    private final Optional<Material> fallback;
    private final List<String> without = new ArrayList<>();
    private final Set<String> outOfRange = new HashSet<>();
    private final Map<String, Value> heldBy = new LinkedHashMap<>();
    private final Set<String> repeated = new HashSet<>();

    CooldownBuilder(Fields file, SideFiles files, Findings findings) {
        this.findings = findings;
        this.materials = new MaterialReader(file, files, findings);
        this.stated = file.has("cooldown");
        Optional<Fields> fields = file.find("cooldown").filter(Value::isWhole).map(Fields.class::cast);
        this.place = file.place("cooldown");
        this.cooldown = fields.flatMap(this::temperatures);
        Optional<Value> material = fields.flatMap(found -> found.find("material"));
        this.hasDefault = material.isPresent();
        this.fallback = material.flatMap(materials::named);
    }

    /** The cool-down, if one is stated; its parts have their cold shape. */
    Optional<Cooldown> cooldown() {
        return cooldown;
    }

    /** Whether one is stated, be it with errors. */
    boolean isStated() {
        return stated;
    }

    private Optional<Cooldown> temperatures(Fields fields) {
        double drawn = fields.number("drawn_at");
        double works = fields.number("works_at");
        if (works > drawn) {
            findings.error(
                    CODE,
                    fields.place("works_at"),
                    "the parts work at " + Wording.number(works) + " K, above the " + Wording.number(drawn)
                            + " K at which they are drawn, expected no more than that");
            return Optional.empty();
        }
        return Optional.of(new Cooldown(drawn, works, ThermalShape.COLD));
    }

    /** A part with how it contracts and how it is coated. */
    Part mounted(Part part, Fields fields) {
        double coating = fields.number("coating_thickness");
        fields.find("held_by").ifPresent(holder -> heldBy.put(part.name(), holder));
        if (part.repeat().isPresent()) {
            repeated.add(part.name());
        }
        Optional<Value> named = fields.find("material");
        Optional<Material> material = named.isPresent() ? materials.named(named.get()) : fallback;
        if (cooldown.isEmpty()) {
            return part.with(Optional.empty(), coating);
        }
        if (named.isEmpty() && !hasDefault) {
            without.add(part.name());
        }
        material.ifPresent(known -> checkRange(known, named.map(Value::place).orElse(place)));
        List<Value> at = fields.list("held_at");
        Vector3D point = Vector3D.of(Fields.number(at.get(0)), Fields.number(at.get(1)), Fields.number(at.get(2)));
        Optional<String> holder = fields.find("held_by").map(Fields::text);
        return part.with(material.filter(this::covers).map(known -> new Mounting(known, point, holder)), coating);
    }

    private boolean covers(Material material) {
        Cooldown asked = cooldown.orElseThrow();
        return material.contraction().covers(asked.drawnAt())
                && material.contraction().covers(asked.worksAt());
    }

    private void checkRange(Material material, Place at) {
        if (!covers(material) && outOfRange.add(material.name())) {
            Cooldown asked = cooldown.orElseThrow();
            findings.error(
                    CODE,
                    at,
                    "the contraction of " + material.name() + " is known from "
                            + Wording.number(material.contraction().lowest()) + " to "
                            + Wording.number(material.contraction().highest())
                            + " K, which does not cover the cool-down from "
                            + Wording.number(asked.drawnAt()) + " to " + Wording.number(asked.worksAt())
                            + " K, expected a table of your own under 'materials' that does");
        }
    }

    /** Reports what no single part tells: parts without a material, and parts that are held by none or by themselves. */
    void check(Set<String> parts) {
        if (!without.isEmpty()) {
            findings.error(
                    CODE,
                    place,
                    "the layout is cooled, but " + Wording.allOf(without)
                            + (without.size() == 1 ? " states" : " state")
                            + " no material, expected 'material' in each part, or under 'cooldown' for all that state none");
        }
        heldBy.forEach((part, holder) -> {
            String name = Fields.text(holder);
            if (!parts.contains(name)) {
                findings.error(
                        "held-by",
                        holder.place(),
                        "unknown part '" + Wording.shortened(name) + "', " + Wording.suggestion(name, parts));
            } else if (repeated.contains(name)) {
                findings.error(
                        "held-by",
                        holder.place(),
                        "the part '" + name
                                + "' is repeated, so that it is not known which copy holds, expected a part that"
                                + " stands once");
            } else if (holdsItself(part)) {
                findings.error(
                        "held-by",
                        holder.place(),
                        "the part " + part + " is held by itself, by way of '" + name
                                + "', expected a part at the end that nothing holds");
            }
        });
    }

    private boolean holdsItself(String part) {
        Set<String> seen = new HashSet<>();
        String at = part;
        while (heldBy.containsKey(at)) {
            at = Fields.text(heldBy.get(at));
            if (at.equals(part)) {
                return true;
            }
            if (!seen.add(at)) {
                return false;
            }
        }
        return false;
    }
}
