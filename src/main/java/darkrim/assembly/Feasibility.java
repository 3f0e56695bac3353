package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.layout.BeamSpec;
import darkrim.layout.DetectorsShape.Side;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Whether an opening can both show every active pixel the whole pupil and keep the direct light off the edge of the die, before any ray is
 * traced.
 *
 * <p>Exact part, from the pupil's true size and distance: the line from the far edge of the pupil past the edge of the opening, moved
 * outward by the placement error t, meets the die plane at the overspill; the line from an active corner to any point of the pupil must
 * pass every cross-section of the opening at least t inside its border. The field limit and other parts are left out.
 *
 * <p>Explanation: with f-number N, edge height h and room d from the last active pixel to the edge of the die, a telecentric beam needs
 * the opening h/(2N) + t beyond the last pixel and then lights up to h/N + 2t beyond it: both wishes hold only if h &lt;= N (d - 2t).
 *
 * @param opening path of the opening
 * @param die path of the die below its middle
 * @param placementError placement error a side between opening and die, mm
 * @param placementStated whether the layout states it; otherwise it is taken as 0
 * @param vignettingMargin by how much the lines from the active corners to the pupil clear the opening after the placement error, mm;
 *     negative if an active corner does not see the whole pupil; absent for an opening that is not convex
 * @param sides the four sides of the die
 */
public record Feasibility(
        String opening,
        String die,
        double placementError,
        boolean placementStated,
        Optional<Double> vignettingMargin,
        List<SideFeasibility> sides) {

    /** Copies the list. */
    public Feasibility {
        sides = List.copyOf(sides);
    }

    /** The same without findings. */
    public static List<Feasibility> of(Assembly assembly, BeamSpec beam, Optional<Double> placementError) {
        return of(assembly, beam, placementError, new Findings());
    }

    /**
     * Lines for every opening that is level, has a level die, square to the axes, below its middle, and lies between the pupil and that die; none
     * under a window.
     *
     * @param assembly the parts
     * @param beam the beam
     * @param placementError total placement error a side, mm, where stated
     * @param findings hears of plates whose openings get no line because they do not lie between the two
     */
    public static List<Feasibility> of(
            Assembly assembly, BeamSpec beam, Optional<Double> placementError, Findings findings) {
        if (beam.window().isPresent()) {
            underWindow(assembly, beam.window().get(), findings);
            return List.of();
        }
        List<Vector3D> pupil = PupilPlane.rim(beam.pupil());
        List<Feasibility> lines = new ArrayList<>();
        for (Opening opening : assembly.openings()) {
            if (!opening.loops().stream().allMatch(FlatLoop::isLevel)) {
                continue;
            }
            dieBelow(opening, assembly.detectors()).ifPresent(die -> {
                if (isBetween(opening, die, pupil)) {
                    lines.add(line(opening, die, pupil, placementError));
                } else {
                    noLine(opening, die, findings);
                }
            });
        }
        return lines;
    }

    private static void underWindow(Assembly assembly, BeamSpec.WindowSpec window, Findings findings) {
        if (assembly.openings().stream()
                .anyMatch(opening -> dieBelow(opening, assembly.detectors()).isPresent())) {
            findings.warning(
                    "no-feasibility-line",
                    window.place(),
                    "no feasibility lines are given, which follow straight lines from the pupil; expected a layout without"
                            + " the window " + window.name() + " for them");
        }
    }

    /** The level die below the middle of an opening, if there is one. */
    static Optional<Die> dieBelow(Opening opening, List<Die> dies) {
        return dies.stream().filter(die -> isBelow(die, opening.centre())).findFirst();
    }

    /** The lines of light run from the pupil down through the opening: of anything else they would tell nothing. */
    private static boolean isBetween(Opening opening, Die die, List<Vector3D> pupil) {
        double top = pupil.stream().mapToDouble(Vector3D::getZ).min().orElseThrow();
        double base = die.active().get(0).getZ();
        return opening.loops().stream()
                .flatMap(List::stream)
                .allMatch(corner -> corner.getZ() < top && corner.getZ() > base);
    }

    private static void noLine(Opening opening, Die die, Findings findings) {
        String plate = opening.name().split("/", 2)[0];
        findings.warning(
                "no-feasibility-line",
                opening.place(),
                "openings of " + plate + " do not lie wholly between the pupil and "
                        + die.name().split("/", 2)[0]
                        + ", so no feasibility line is given for them; expected the plate below the pupil and above the"
                        + " active surface");
    }

    private static boolean isBelow(Die die, Vector3D point) {
        List<Vector3D> outline = die.outline();
        return FlatLoop.isLevel(outline)
                && FlatLoop.isSquareToAxes(outline)
                && outline.get(0).getZ() < point.getZ()
                && FlatLoop.leastInward(outline, point).orElse(-1.0) >= 0;
    }

    private static Feasibility line(Opening opening, Die die, List<Vector3D> pupil, Optional<Double> placementError) {
        double error = placementError.orElse(0.0);
        List<SideFeasibility> sides = new ArrayList<>();
        for (Side side : Side.values()) {
            sides.add(SideFeasibility.of(opening, die, pupil, side, error));
        }
        return new Feasibility(
                opening.name(),
                die.name(),
                error,
                placementError.isPresent(),
                vignettingMargin(opening, die, pupil).map(margin -> margin - error),
                sides);
    }

    /** Least distance, inside the opening, of the lines from the active corners to the pupil's rim from the opening's borders, mm. */
    private static Optional<Double> vignettingMargin(Opening opening, Die die, List<Vector3D> pupil) {
        double least = Double.POSITIVE_INFINITY;
        for (List<Vector3D> loop : opening.loops()) {
            double z = loop.get(0).getZ();
            Optional<Double> sense = FlatLoop.sense(loop);
            if (sense.isEmpty()) {
                return Optional.empty();
            }
            for (Vector3D corner : die.active()) {
                for (Vector3D point : pupil) {
                    Vector3D crossing = corner.lerp(point, (z - corner.getZ()) / (point.getZ() - corner.getZ()));
                    least = Math.min(least, FlatLoop.leastInward(loop, sense.get(), crossing));
                }
            }
        }
        return Optional.of(least);
    }

    /** Whether every active pixel sees the whole pupil and no direct light passes the edge of the die; false where the first is unknown. */
    public boolean holds() {
        return vignettingMargin.orElse(-1.0) >= 0 && sides.stream().allMatch(SideFeasibility::holds);
    }

    /** Whether it is known not to hold. */
    public boolean fails() {
        return vignettingMargin.orElse(0.0) < 0 || !sides.stream().allMatch(SideFeasibility::holds);
    }

    /** The side with the least room left. */
    public SideFeasibility tightest() {
        return sides.stream()
                .min(Comparator.comparingDouble(side -> side.room() - side.overspill()))
                .orElseThrow();
    }

    /** One paragraph in plain English with the numbers of the tightest side and the rule that explains them. */
    public String text() {
        return FeasibilityText.of(this);
    }
}
