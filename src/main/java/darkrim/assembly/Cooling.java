package darkrim.assembly;

import darkrim.geom.Placement;
import darkrim.layout.Cooldown;
import darkrim.layout.Layout;
import darkrim.layout.Mounting;
import darkrim.layout.Part;
import darkrim.material.Material;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Where the parts of a layout go when it is cooled. A part becomes smaller alike in all directions about the point where it is held. That point
 * stays, or moves with the part that holds it. The beam is no part and stays.
 */
public final class Cooling {
    private final Map<String, Part> parts = new HashMap<>();
    private final Optional<Cooldown> cooldown;
    private final ToDoubleFunction<Material> contraction;

    private Cooling(Layout layout, Optional<Cooldown> cooldown, ToDoubleFunction<Material> contraction) {
        layout.parts().forEach(part -> parts.put(part.name(), part));
        this.cooldown = cooldown;
        this.contraction = contraction;
    }

    /** To the shape that a layout has: nowhere if that is the one as drawn. */
    public static Cooling of(Layout layout) {
        Optional<Cooldown> cold = layout.cooldown().filter(Cooldown::isCold);
        return new Cooling(
                layout,
                cold,
                material -> material.contraction()
                        .between(
                                cold.orElseThrow().drawnAt(), cold.orElseThrow().worksAt()));
    }

    /** The same with another contraction of one material, as a share of its length. */
    public Cooling with(Material other, double otherContraction) {
        ToDoubleFunction<Material> before = contraction;
        Map<String, Part> same = parts;
        return new Cooling(
                same, cooldown, material -> material.equals(other) ? otherContraction : before.applyAsDouble(material));
    }

    private Cooling(Map<String, Part> parts, Optional<Cooldown> cooldown, ToDoubleFunction<Material> contraction) {
        this.parts.putAll(parts);
        this.cooldown = cooldown;
        this.contraction = contraction;
    }

    /**
     * Where a part as drawn goes.
     *
     * @param part its name
     * @return empty where it stays, to the last bit
     */
    public Optional<Placement> of(String part) {
        return of(part, Vector3D.ZERO);
    }

    /**
     * Where a copy of a part as drawn goes, by its name.
     *
     * @param copy name of the part with the number of the copy, such as {@code lid[1,2]}
     * @return empty where it stays, to the last bit
     */
    public Optional<Placement> ofCopy(String copy) {
        String part = PartName.of(copy);
        Optional<Part.Repeat> repeat = Optional.ofNullable(parts.get(part)).flatMap(Part::repeat);
        if (repeat.isEmpty()) {
            return of(part);
        }
        Part.Repeat grid = repeat.get();
        return GridSteps.of(grid.columns(), grid.rows(), grid.stepX(), grid.stepY()).stream()
                .filter(step -> copy.equals(part + step.number()))
                .findFirst()
                .flatMap(step ->
                        of(part, Vector3D.of(step.offset().getX(), step.offset().getY(), 0)));
    }

    /**
     * Where a copy of a part as drawn goes.
     *
     * @param part its name
     * @param step how far the copy stands from the part, mm
     * @return empty where it stays, to the last bit
     */
    public Optional<Placement> of(String part, Vector3D step) {
        Part own = parts.get(part);
        if (cooldown.isEmpty() || own == null || own.mounting().isEmpty()) {
            return Optional.empty();
        }
        Mounting mounting = own.mounting().get();
        Vector3D drawn = own.placement().point(mounting.heldAt()).add(step);
        Vector3D held = mounting.heldBy()
                .filter(holder -> !isHeldByItself(part))
                .flatMap(this::of)
                .map(holder -> holder.point(drawn))
                .orElse(drawn);
        double shrinks = contraction.applyAsDouble(mounting.material());
        return shrinks == 0 && held.equals(drawn)
                ? Optional.empty()
                : Optional.of(Placement.NONE.thenScaled(1 - shrinks, drawn, held));
    }

    /** Whether a part is held by itself in the end: a finding says so, and nothing is computed, but the parts are placed to say what else is wrong. */
    private boolean isHeldByItself(String part) {
        Set<String> seen = new HashSet<>();
        Optional<String> at = Optional.of(part);
        while (at.isPresent() && seen.add(at.get())) {
            at = Optional.ofNullable(parts.get(at.get()))
                    .flatMap(Part::mounting)
                    .flatMap(Mounting::heldBy);
        }
        return at.isPresent();
    }
}
