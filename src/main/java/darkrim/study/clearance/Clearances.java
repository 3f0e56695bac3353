package darkrim.study.clearance;

import darkrim.assembly.Assembly;
import darkrim.assembly.AssemblyMemory;
import darkrim.assembly.Selection;
import darkrim.layout.Cooldown;
import darkrim.layout.Layout;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.Clearance;
import darkrim.layout.Requirement.Lowering;
import darkrim.layout.Requirement.Shapes;
import darkrim.layout.ThermalShape;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.distance.Least;
import darkrim.study.distance.LeastDistance;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Decides requirements about clearances: by geometry alone, exact but for rounding. A distance that differs from what is asked by no more than
 * rounding counts as what is asked. For use by one thread.
 */
public final class Clearances {
    /** Places nearer than this share of the largest coordinate are not told apart, as everywhere in the program. */
    private static final double ROUNDING = 0x1p-44;

    private final Layout layout;
    private final ShapedParts judged;
    private final AssemblyMemory memory;
    private Optional<ShapedParts> asDrawn = Optional.empty();

    /**
     * @param layout the layout, in the shape that is judged
     * @param assembly its parts
     * @param scene its scene
     * @param memory helps to put the other shape together
     */
    public Clearances(Layout layout, Assembly assembly, Scene scene, AssemblyMemory memory) {
        this.layout = layout;
        this.judged = ShapedParts.of(layout, assembly, scene);
        this.memory = memory;
    }

    /**
     * Decides a requirement.
     *
     * @param requirement asks for a clearance between surfaces that exist
     * @return an outcome for each shape that counts, and one for the way in
     */
    public RequirementResult of(Requirement requirement) {
        Clearance asked = (Clearance) requirement.condition();
        List<Outcome> outcomes = new ArrayList<>();
        for (ThermalShape shape : shapes(asked.shapes())) {
            outcomes.add(outcome(requirement, asked, in(shape), Optional.empty()));
        }
        if (asked.lowering().isPresent()) {
            outcomes.add(outcome(requirement, asked, in(ThermalShape.WARM), asked.lowering()));
        }
        return RequirementResult.of(requirement, outcomes);
    }

    /** In a layout that is not cooled, and where the shape as drawn is asked for, that is the only one. */
    private List<ThermalShape> shapes(Shapes asked) {
        if (!layout.cooldown().map(Cooldown::isCold).orElse(false)) {
            return List.of(ThermalShape.WARM);
        }
        return switch (asked) {
            case WARM -> List.of(ThermalShape.WARM);
            case COLD -> List.of(ThermalShape.COLD);
            case BOTH -> List.of(ThermalShape.WARM, ThermalShape.COLD);
        };
    }

    private ShapedParts in(ThermalShape shape) {
        if (shape == judged.shape()) {
            return judged;
        }
        if (asDrawn.isEmpty()) {
            asDrawn = Optional.of(ShapedParts.of(layout.warm(), memory));
        }
        return asDrawn.get();
    }

    private Outcome outcome(Requirement requirement, Clearance asked, ShapedParts parts, Optional<Lowering> way) {
        List<Surface> first = parts.select(requirement.surfaces());
        List<Surface> second = parts.select(asked.other());
        boolean firstMoves = way.isPresent() && areMoved(first, way.get().moved());
        Vector3D back = way.map(each -> each.direction().multiply(-each.from())).orElse(Vector3D.ZERO);
        Evidence.Distance found =
                firstMoves ? distance(parts, second, first, back, true) : distance(parts, first, second, back, false);
        Surface surface = judged.scene().surface(found.first()).orElseThrow();
        double rounding = ROUNDING * parts.scene().bound();
        boolean holds = found.millimetres() >= asked.atLeast() - rounding && !found.overlap();
        return new Outcome(surface, Outcome.WHOLE, holds ? Verdict.PASS : Verdict.FAIL, found.millimetres(), found);
    }

    private static boolean areMoved(List<Surface> side, String moved) {
        Selection selection = Selection.of(moved);
        return side.stream().allMatch(surface -> selection.selects(surface.name()));
    }

    /**
     * The least distance between two sides.
     *
     * @param standing the side that stands
     * @param moving the side that is moved to its place from {@code back}, mm, if that is not 0
     * @param movingIsFirst whether that is the first side of the clearance
     */
    private static Evidence.Distance distance(
            ShapedParts parts, List<Surface> standing, List<Surface> moving, Vector3D back, boolean movingIsFirst) {
        Side stands = new Side(parts, standing);
        Side moves = new Side(parts, moving);
        Least least = LeastDistance.between(moves.boxes(), back, stands.boxes());
        OptionalDouble raised =
                back.equals(Vector3D.ZERO) ? OptionalDouble.empty() : OptionalDouble.of(least.travel() * back.norm());
        Pair ends = new Pair(
                stands.surface(least.second()).name(),
                least.onSecond(),
                moves.surface(least.first()).name(),
                least.onFirst());
        double takenOff = moves.beyond(least.first()) + stands.beyond(least.second());
        if (least.onFirst().distance(least.onSecond())
                <= ROUNDING * parts.scene().bound()) {
            return ends.apart(0, parts.shape(), raised, false, takenOff, movingIsFirst);
        }
        Optional<Pair> nested = nested(parts, standing, moving);
        if (nested.isPresent()) {
            OptionalDouble inPlace = raised.isPresent() ? OptionalDouble.of(0) : raised;
            return nested.get().apart(0, parts.shape(), inPlace, true, 0, movingIsFirst);
        }
        return ends.apart(least.millimetres(), parts.shape(), raised, false, takenOff, movingIsFirst);
    }

    /** Where a piece of one side lies inside a solid of the other. On a way on which nothing is met it then does all along. */
    private static Optional<Pair> nested(ShapedParts parts, List<Surface> standing, List<Surface> moving) {
        return Nesting.of(parts, moving, standing)
                .map(found ->
                        new Pair(found.solid(), found.at(), found.surface().name(), found.at()))
                .or(() -> Nesting.of(parts, standing, moving)
                        .map(found -> new Pair(found.surface().name(), found.at(), found.solid(), found.at())));
    }

    /** What comes nearest of the side that stands and of the one that is moved. */
    private record Pair(String standing, Vector3D onStanding, String moving, Vector3D onMoving) {
        private Evidence.Distance apart(
                double millimetres,
                ThermalShape shape,
                OptionalDouble raised,
                boolean overlap,
                double takenOff,
                boolean movingIsFirst) {
            return new Evidence.Distance(
                    millimetres,
                    shape,
                    movingIsFirst ? moving : standing,
                    movingIsFirst ? onMoving : onStanding,
                    movingIsFirst ? standing : moving,
                    movingIsFirst ? onStanding : onMoving,
                    raised,
                    overlap,
                    takenOff);
        }
    }
}
