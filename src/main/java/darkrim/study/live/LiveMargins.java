package darkrim.study.live;

import darkrim.layout.Requirement;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.Margins;
import darkrim.study.ChordDoubt;
import darkrim.study.DirectMargins;
import darkrim.study.PlacedScene;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Evidence;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** The margins of one position, each begun where the last position lets it be expected. Safe for use by many threads. */
final class LiveMargins {
    private final Scene scene;
    private final Margins margins;
    private final MarginMemory memory;
    private final Map<String, Double> chosen;
    private final BooleanSupplier stop;
    /** Whether darkness is worth no more than its clearance. */
    private final boolean doubted;

    /**
     * @param placed the position
     * @param memory what was found at the last positions
     * @param chosen the values of all dimensions
     * @param stop whether to give up
     */
    LiveMargins(PlacedScene placed, MarginMemory memory, Map<String, Double> chosen, BooleanSupplier stop) {
        this.scene = placed.scene();
        this.margins = new Margins(placed.scene(), placed.tree());
        this.memory = memory;
        this.chosen = chosen;
        this.stop = stop;
        this.doubted = ChordDoubt.of(placed.layout(), placed.assembly(), scene).isPresent();
    }

    /**
     * What was found.
     *
     * @param requirement the margin of a requirement
     * @param bySurface margins of direct light, for the evidence
     */
    record Found(RequirementMargin requirement, Map<Surface, LightMargin> bySurface) {}

    /** The margin of a requirement; empty if it was stopped. */
    Optional<Found> of(RequirementResult result) {
        Requirement.Condition condition = result.requirement().condition();
        if (condition instanceof Requirement.AtMost || condition instanceof Requirement.Clearance) {
            return provedDark(result).map(bySurface -> new Found(RequirementMargin.of(result, scene), bySurface));
        }
        Kind kind = kind(result);
        List<Surface> surfaces = surfaces(result, kind);
        String key = kind + " " + result.requirement().name();
        Optional<Margins.Least> least = switch (kind) {
            case CLEARANCE -> margins.leastClearance(surfaces, memory.guess(key, chosen), stop);
            case INTRUSION -> margins.deepestIntrusion(surfaces, memory.guess(key, chosen), stop);
            case PUPIL -> margins.leastPupil(surfaces, memory.guess(key, chosen), stop);
            case NONE -> Optional.empty();
        };
        if (stop.getAsBoolean()) {
            return Optional.empty();
        }
        memory.put(key, chosen, least);
        Map<Surface, LightMargin> bySurface = kind == Kind.CLEARANCE || kind == Kind.INTRUSION
                ? DirectMargins.alike(margins, surfaces, least)
                : Map.of();
        return Optional.of(new Found(RequirementMargin.of(result, least), bySurface));
    }

    /** Clearances of what meets a limit by a proof of darkness, where that is worth no more than they are; empty if it was stopped. */
    private Optional<Map<Surface, LightMargin>> provedDark(RequirementResult result) {
        List<Surface> dark = result.outcomes().stream()
                .filter(outcome -> doubted && outcome.evidence() instanceof Evidence.ProvedDark)
                .map(Outcome::surface)
                .toList();
        if (dark.isEmpty()) {
            return Optional.of(Map.of());
        }
        String key = Kind.CLEARANCE + " " + result.requirement().name();
        Optional<Margins.Least> least = margins.leastClearance(dark, memory.guess(key, chosen), stop);
        if (stop.getAsBoolean()) {
            return Optional.empty();
        }
        memory.put(key, chosen, least);
        return Optional.of(DirectMargins.alike(margins, dark, least));
    }

    /** How soon the margin of a requirement should be known: what fails or is near to failing first. */
    double urgency(RequirementResult result) {
        if (result.requirement().condition() instanceof Requirement.AtMost
                || result.requirement().condition() instanceof Requirement.Clearance) {
            return Double.NEGATIVE_INFINITY;
        }
        String key = kind(result) + " " + result.requirement().name();
        return memory.expected(key, chosen).orElse(result.verdict() == Verdict.FAIL ? -1 : 1);
    }

    private enum Kind {
        CLEARANCE,
        INTRUSION,
        PUPIL,
        NONE
    }

    private static Kind kind(RequirementResult result) {
        if (result.requirement().condition() instanceof Requirement.PupilSeen) {
            return Kind.PUPIL;
        }
        return switch (result.verdict()) {
            case PASS -> Kind.CLEARANCE;
            case FAIL -> Kind.INTRUSION;
            case UNDECIDED -> Kind.NONE;
        };
    }

    private List<Surface> surfaces(RequirementResult result, Kind kind) {
        return result.outcomes().stream()
                .filter(outcome -> kind != Kind.INTRUSION || outcome.verdict() == Verdict.FAIL)
                .map(Outcome::surface)
                .filter(surface -> kind == Kind.CLEARANCE || margins.isFlat(surface))
                .toList();
    }
}
