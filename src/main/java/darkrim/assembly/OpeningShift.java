package darkrim.assembly;

import darkrim.geom.Placement;
import darkrim.layout.Layout;
import darkrim.layout.Mounting;
import darkrim.layout.Part;
import darkrim.material.Contraction;
import darkrim.material.Material;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * How far the edges of an opening move against those of the die below it when the layout is cooled.
 *
 * @param opening path of the opening
 * @param die path of the die below its middle
 * @param sides the four sides
 */
public record OpeningShift(String opening, String die, List<Side> sides) {
    private static final List<String> NAMES = List.of("+x", "-x", "+y", "-y");
    private static final List<Vector3D> DIRECTIONS =
            List.of(Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_X, Vector3D.Unit.PLUS_Y, Vector3D.Unit.MINUS_Y);

    /** Copies the list. */
    public OpeningShift {
        sides = List.copyOf(sides);
    }

    /**
     * One side.
     *
     * @param name {@code +x}, {@code -x}, {@code +y} or {@code -y}
     * @param moved how much farther beyond the edge of the die the edge of the opening is when cold, mm; negative where it has come nearer
     * @param uncertainty by how much this may be off, from the stated accuracies of the contractions, all at their worst; NaN where one is not
     *     stated
     */
    public record Side(String name, double moved, double uncertainty) {}

    /**
     * The shifts of all openings with a die below their middle.
     *
     * @param cold a layout in its cold shape
     * @param drawn its parts as drawn
     */
    public static List<OpeningShift> of(Layout cold, Assembly drawn) {
        Cooling cooling = Cooling.of(cold);
        Set<Material> materials = new LinkedHashSet<>();
        cold.parts().stream()
                .map(Part::mounting)
                .flatMap(Optional::stream)
                .map(Mounting::material)
                .forEach(materials::add);
        List<OpeningShift> shifts = new ArrayList<>();
        for (Opening opening : drawn.openings()) {
            Feasibility.dieBelow(opening, drawn.detectors()).ifPresent(die -> {
                List<Side> sides = new ArrayList<>();
                for (int i = 0; i < NAMES.size(); i++) {
                    sides.add(side(NAMES.get(i), DIRECTIONS.get(i), opening, die, cold, cooling, materials));
                }
                shifts.add(new OpeningShift(opening.name(), die.name(), sides));
            });
        }
        return shifts;
    }

    private static Side side(
            String name,
            Vector3D direction,
            Opening opening,
            Die die,
            Layout cold,
            Cooling cooling,
            Set<Material> materials) {
        double moved = moved(direction, opening, die, cooling);
        double uncertainty = 0;
        for (Material material : materials) {
            Contraction contraction = material.contraction();
            double drawnAt = cold.cooldown().orElseThrow().drawnAt();
            double worksAt = cold.cooldown().orElseThrow().worksAt();
            double share = contraction.between(drawnAt, worksAt);
            Cooling other = cooling.with(material, share * (1 + contraction.accuracy(worksAt)));
            double change = share == 0 ? 0 : moved(direction, opening, die, other) - moved;
            // Where nothing depends on a material, what is not known of it does not matter.
            boolean counts = moved(direction, opening, die, cooling.with(material, 2 * share)) != moved;
            uncertainty += counts ? Math.abs(change) : 0;
        }
        return new Side(name, moved, uncertainty);
    }

    private static double moved(Vector3D direction, Opening opening, Die die, Cooling cooling) {
        return moved(direction, opening.landNearPupil(), cooling.ofCopy(copy(opening.name())))
                - moved(direction, die.outline(), cooling.ofCopy(copy(die.name())));
    }

    /** How far the edge of a loop moves, mm. */
    private static double moved(Vector3D direction, List<Vector3D> loop, Optional<Placement> way) {
        double before = Double.NEGATIVE_INFINITY;
        double after = Double.NEGATIVE_INFINITY;
        for (Vector3D corner : loop) {
            before = Math.max(before, corner.dot(direction));
            after = Math.max(
                    after, way.map(each -> each.point(corner)).orElse(corner).dot(direction));
        }
        return after - before;
    }

    private static String copy(String path) {
        return path.split("/", 2)[0];
    }
}
