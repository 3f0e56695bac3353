package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoublePredicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Looks for dark clearances: the greatest distance within which a surface can be moved and is proved dark, by halving an interval.
 *
 * <p>The least of many is found without the others: with the least so far, one proof says of the next surface that it is no less.
 */
final class ClearanceSearch {
    /** A clearance that holds is proved with a few pairs; one that does not hold would use up all that are allowed. */
    private static final ProofSettings FEW_PAIRS = new ProofSettings(1e-3, 60, ProofSettings.DEFAULT.gapWidth());

    /** Most that hold need no more; what they show of a limit is then confirmed with more. */
    private static final ProofSettings FEWEST_PAIRS = new ProofSettings(1e-3, 12, ProofSettings.DEFAULT.gapWidth());

    /** To find the place where a clearance ends. */
    private static final ProofSettings PLACE = new ProofSettings(1e-2, 400, ProofSettings.DEFAULT.gapWidth());

    /** How near to the limit a single clearance is found, mm. */
    private static final double FINE = 1e-7;
    /** How near to the limit the least of many is found, mm. */
    private static final double TABLE = 1e-6;
    /** A limit is found no nearer than to this share of it. */
    private static final double SHARE = 1e-6;
    /** Halvings with all surfaces together. */
    private static final int TOGETHER = 6;
    /** Where to look in an interval: a proof that fails costs some ten times as much as one that succeeds. */
    private static final double EARLY = 0.2;
    /** How far beyond the limit a line of light is looked for, mm. */
    private static final double BEYOND = 2e-6;

    private final DarknessProof proofs;
    private final DarknessProof quick;
    private final DarknessProof places;
    private final LimitingEdge limiting;
    private final NearestLight nearest;
    private final double farthest;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param limiting names what a line passes
     * @param nearest names what sets a clearance
     * @param farthest clearances are looked for up to this, mm
     * @param stop whether proofs give up
     */
    ClearanceSearch(
            Scene scene,
            FacetTree tree,
            LimitingEdge limiting,
            NearestLight nearest,
            double farthest,
            BooleanSupplier stop) {
        proofs = new DarknessProof(scene, tree, FEW_PAIRS, stop);
        quick = new DarknessProof(scene, tree, FEWEST_PAIRS, stop);
        places = new DarknessProof(scene, tree, PLACE, stop);
        this.limiting = limiting;
        this.nearest = nearest;
        this.farthest = farthest;
    }

    /** The clearance of one surface. */
    Margin of(Surface surface) {
        Moving moving = new Moving(surface, proofs.faces(surface));
        if (!isDark(moving, 0)) {
            return margin(moving, 0);
        }
        LimitBracket coarse = LimitBracket.fromZero(distance -> isPlainlyDark(moving, distance), farthest);
        double limit = limit(moving, coarse, FINE);
        return limit >= farthest ? capped() : margin(moving, limit);
    }

    private Margin capped() {
        return new Margin(farthest, true, Optional.empty(), "");
    }

    /** A surface with its faces. */
    private record Moving(Surface surface, List<Face> faces) {}

    /**
     * The least clearance of surfaces that are proved dark; empty if there is none, or it was stopped.
     *
     * @param guess where to begin
     */
    Optional<Margins.Least> least(List<Surface> surfaces, Optional<MarginGuess> guess, BooleanSupplier stop) {
        List<Moving> all = new ArrayList<>();
        Margins.likelyFirst(surfaces, guess).forEach(surface -> all.add(new Moving(surface, proofs.faces(surface))));
        if (all.isEmpty() || stop.getAsBoolean()) {
            return Optional.empty();
        }
        LimitBracket bracket = guess.isPresent() ? around(all.get(0), guess.get()) : together(all, stop);
        Moving worst = all.get(0);
        double least = limit(worst, bracket, TABLE);
        // What stays dark within the least so far has no less.
        for (Moving next : all.subList(1, all.size())) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            if (!isDark(next, least)) {
                double alike = Math.max(0, least - TABLE);
                if (!isDark(next, alike)) {
                    worst = next;
                    alike = limit(next, new LimitBracket(0, alike), TABLE);
                }
                least = alike;
            }
        }
        Margin margin = least >= farthest ? capped() : margin(worst, least);
        return stop.getAsBoolean() ? Optional.empty() : Optional.of(new Margins.Least(worst.surface, margin));
    }

    private LimitBracket around(Moving moving, MarginGuess guess) {
        return LimitBracket.around(guess.millimetres(), distance -> isPlainlyDark(moving, distance), farthest);
    }

    /** The limit of all together, in steps that double, then by halving; what stopped it last comes in front. */
    private LimitBracket together(List<Moving> all, BooleanSupplier stop) {
        DoublePredicate dark = distance -> stop.getAsBoolean() || !bringsOpenToFront(all, distance);
        LimitBracket limit = LimitBracket.fromZero(dark, farthest);
        return limit.isCapped() ? limit : limit.narrowed(dark, limit.high() / (1 << TOGETHER), 0, 0.5);
    }

    /** Whether some surface is not quickly proved dark within a distance; the first such is put in front. */
    private boolean bringsOpenToFront(List<Moving> all, double distance) {
        for (int i = 0; i < all.size(); i++) {
            if (!isPlainlyDark(all.get(i), distance)) {
                all.add(0, all.remove(i));
                return true;
            }
        }
        return false;
    }

    /** Narrows an interval by quick proofs; then the full proof says whether the limit lies beyond what these can do. */
    private double limit(Moving moving, LimitBracket bracket, double fineness) {
        double low = bracket.narrowed(distance -> isPlainlyDark(moving, distance), fineness, SHARE, EARLY)
                .low();
        double step = Math.max(fineness, SHARE * low);
        if (low >= farthest || !isDark(moving, Math.min(farthest, low + step))) {
            return low;
        }
        DoublePredicate dark = distance -> isDark(moving, distance);
        return LimitBracket.around(low + step, dark, farthest)
                .narrowed(dark, fineness, SHARE, EARLY)
                .low();
    }

    private boolean isPlainlyDark(Moving moving, double distance) {
        return quick.moved(moving.faces, moving.surface.name(), distance).dark();
    }

    private boolean isDark(Moving moving, double distance) {
        return proofs.moved(moving.faces, moving.surface.name(), distance).dark();
    }

    private Margin margin(Moving moving, double clearance) {
        double farther = clearance + Math.max(BEYOND, 2e-6 * clearance);
        DarknessProof.Moved beyond = places.moved(moving.faces, moving.surface.name(), farther);
        Optional<WitnessRay> line = beyond.line().or(beyond::open);
        String passed = passed(moving, beyond);
        // Where the proof ends without an edge nothing explains the limit: that is said, not guessed.
        String setBy =
                passed.isEmpty() ? "" : nearest.setBy(moving.faces, clearance).orElse(passed);
        return new Margin(clearance, false, line, setBy);
    }

    /** The edge that the line passes, or that keeps the proof open; empty if there is none. */
    private String passed(Moving moving, DarknessProof.Moved beyond) {
        if (beyond.line().isPresent()) {
            WitnessRay line = beyond.line().get();
            Vector3D facing = NearestFace.of(moving.faces, line.to())
                    .face()
                    .piece()
                    .frame()
                    .normal();
            return limiting.of(line, facing);
        }
        return beyond.openEdge() >= 0 ? limiting.names(beyond.openEdge()) : "";
    }
}
