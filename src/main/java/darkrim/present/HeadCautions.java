package darkrim.present;

import darkrim.assembly.Feasibility;
import darkrim.diagnostic.Finding;
import darkrim.study.CheckResult;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What stands right below a verdict, as it speaks against relying on it. */
public final class HeadCautions {
    /** Openings that are named in the head. */
    private static final Rows OPENINGS = new Rows(2);

    /** Open or crossing meshes and gaps: what the proofs say of the facets need not hold for what will be built. */
    private static final Set<String> LEAKS = Set.of("mesh-open", "mesh-flaw", "mesh-self-crossing", "narrow-gap");

    /** Facets that stand for curved surfaces: what is dark behind them by little need not be behind what will be built. */
    private static final Set<String> FACETS = Set.of("mesh-tolerance");

    /** Light that no requirement counts and that is much beside a limit. */
    private static final Set<String> AGAIN = Set.of("reflected-twice");

    /** Warnings about parts that hardly stand or reflect as they are meant to: darkness may come of the mistake alone. */
    private static final Set<String> MISTAKES =
            Set.of("parts-overlap", "detector-faces-away", "no-finish", "material-without-finish", "beyond-pupil");

    private HeadCautions() {}

    /** The cautions about what a check found, a line each. */
    public static List<String> of(CheckResult result) {
        return Stream.concat(stopped(result).stream(), of(result.feasibility(), result.warnings()).stream())
                .toList();
    }

    /** The cautions, a line each. */
    public static List<String> of(List<Feasibility> feasibility, List<Finding> warnings) {
        return Stream.of(
                        infeasible(feasibility),
                        first(warnings, MISTAKES, "the layout may not say what is meant. "),
                        first(warnings, LEAKS, "light may leak, or be stopped by what is not there. "),
                        first(warnings, FACETS, ""),
                        first(warnings, AGAIN, ""))
                .flatMap(Optional::stream)
                .toList();
    }

    /** Without it the missing warnings of a check that was stopped would look like none. */
    private static Optional<String> stopped(CheckResult result) {
        return result.stopped()
                ? Optional.of(
                        "CAUTION: the check was stopped before its end. What is decided holds; light reflected twice was not"
                                + " looked at, or not all of it, and margins may be missing.")
                : Optional.empty();
    }

    /** A verdict is about the drawn positions; the feasibility line counts the placement error too and may speak against it. */
    private static Optional<String> infeasible(List<Feasibility> feasibility) {
        List<Feasibility> failing =
                feasibility.stream().filter(Feasibility::fails).toList();
        if (failing.isEmpty()) {
            return Optional.empty();
        }
        double error = failing.get(0).placementError();
        List<Feasibility> named = OPENINGS.shown(failing);
        String names = named.stream().map(line -> Printable.of(line.opening())).collect(Collectors.joining(", "));
        int more = OPENINGS.left(failing);
        return Optional.of(
                "CAUTION: the feasibility of " + names + (more > 0 ? " and " + more + " more" : "") + " fails "
                        + (error > 0
                                ? "with the placement error of " + Figures.length(error)
                                        + " mm; the verdict is for the parts exactly where they are drawn."
                                : "even without placement error; the verdict covers only what the requirements ask."));
    }

    /** The first of some warnings and how many more there are; what is read first stands for all. */
    private static Optional<String> first(List<Finding> warnings, Set<String> codes, String lead) {
        List<Finding> found = warnings.stream()
                .filter(warning -> codes.contains(warning.code()))
                .toList();
        if (found.isEmpty()) {
            return Optional.empty();
        }
        int more = found.size() - 1;
        return Optional.of("CAUTION: " + lead + Printable.of(found.get(0).message()) + "."
                + (more > 0 ? " " + Figures.counted(more, "more such warning") + " below." : ""));
    }
}
