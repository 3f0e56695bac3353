package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Looks for dark clearances: the greatest distance within which a surface can be moved and is proved dark, by halving an interval.
 *
 * <p>The least of many is found without the others: with the least so far, one proof says of the next surface that it is no less.
 */
final class ClearanceSearch {
    /** A clearance that holds is proved with a few pairs; one that does not hold would use up all that are allowed. */
    private static final ProofSettings FEW_PAIRS = new ProofSettings(1e-3, 60, ProofSettings.DEFAULT.gapWidth());

    /** To find the place where a clearance ends. */
    private static final ProofSettings PLACE = new ProofSettings(1e-2, 400, ProofSettings.DEFAULT.gapWidth());

    /** Halvings with all surfaces together. */
    private static final int TOGETHER = 6;

    private static final double FIRST_STEP = 0.01;
    /** How near to the limit a single clearance is found, mm. */
    private static final double FINE = 1e-7;
    /** How near to the limit the least of many is found, mm. */
    private static final double TABLE = 1e-6;
    /** How far beyond the limit a line of light is looked for, mm. */
    private static final double BEYOND = 2e-6;

    private final DarknessProof proofs;
    private final DarknessProof places;
    private final LimitingEdge limiting;
    private final double farthest;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param limiting names what sets a clearance
     * @param farthest clearances are looked for up to this, mm
     */
    ClearanceSearch(Scene scene, FacetTree tree, LimitingEdge limiting, double farthest) {
        proofs = new DarknessProof(scene, tree, FEW_PAIRS);
        places = new DarknessProof(scene, tree, PLACE);
        this.limiting = limiting;
        this.farthest = farthest;
    }

    /** Distances between which the limit lies: dark within the first, not proved dark within the second, mm. */
    private record Bracket(double dark, double open) {}

    /** The clearance of one surface. */
    Margin of(Surface surface) {
        Moving moving = new Moving(surface, proofs.faces(surface));
        if (!isDark(moving, 0)) {
            return margin(moving, 0);
        }
        double dark = 0;
        double open = Math.min(FIRST_STEP, farthest);
        while (isDark(moving, open)) {
            dark = open;
            if (open >= farthest) {
                return new Margin(farthest, true, Optional.empty(), "");
            }
            open = Math.min(farthest, 2 * open);
        }
        return margin(moving, halved(moving, new Bracket(dark, open), FINE).dark);
    }

    /** A surface with its faces. */
    private record Moving(Surface surface, List<Face> faces) {}

    /** The least clearance of surfaces that are proved dark; empty if there is none, or it was stopped. */
    Optional<Margins.Least> least(List<Surface> surfaces, BooleanSupplier stop) {
        List<Moving> all = new ArrayList<>();
        surfaces.forEach(surface -> all.add(new Moving(surface, proofs.faces(surface))));
        if (all.isEmpty()) {
            return Optional.empty();
        }
        // All together first: in steps that double, then by halving, with what stopped it last in front.
        double dark = 0;
        double open = Math.min(FIRST_STEP, farthest);
        while (!bringsOpenToFront(all, open, stop)) {
            dark = open;
            if (open >= farthest) {
                Margin none = new Margin(farthest, true, Optional.empty(), "");
                return found(new Margins.Least(surfaces.get(0), none), stop);
            }
            open = Math.min(farthest, 2 * open);
        }
        for (int i = 0; i < TOGETHER && !stop.getAsBoolean(); i++) {
            double middle = 0.5 * (dark + open);
            if (bringsOpenToFront(all, middle, stop)) {
                open = middle;
            } else {
                dark = middle;
            }
        }
        // Then one by one: what stays dark within the least so far has no less.
        Moving worst = all.get(0);
        double least = halved(worst, new Bracket(dark, open), TABLE).dark;
        for (Moving next : all.subList(1, all.size())) {
            if (!stop.getAsBoolean() && !isDark(next, least)) {
                double alike = Math.max(dark, least - TABLE);
                if (!isDark(next, alike)) {
                    worst = next;
                    alike = halved(next, new Bracket(dark, alike), TABLE).dark;
                }
                least = alike;
            }
        }
        return stop.getAsBoolean()
                ? Optional.empty()
                : found(new Margins.Least(worst.surface, margin(worst, least)), stop);
    }

    private static Optional<Margins.Least> found(Margins.Least least, BooleanSupplier stop) {
        return stop.getAsBoolean() ? Optional.empty() : Optional.of(least);
    }

    /** Whether some surface is not proved dark within a distance; the first such is put in front. */
    private boolean bringsOpenToFront(List<Moving> all, double distance, BooleanSupplier stop) {
        for (int i = 0; i < all.size() && !stop.getAsBoolean(); i++) {
            if (!isDark(all.get(i), distance)) {
                all.add(0, all.remove(i));
                return true;
            }
        }
        return false;
    }

    private Bracket halved(Moving moving, Bracket bracket, double fineness) {
        double dark = bracket.dark;
        double open = bracket.open;
        while (open - dark > Math.max(fineness, 1e-6 * open)) {
            double middle = 0.5 * (dark + open);
            if (isDark(moving, middle)) {
                dark = middle;
            } else {
                open = middle;
            }
        }
        return new Bracket(dark, open);
    }

    private boolean isDark(Moving moving, double distance) {
        return proofs.moved(moving.faces, moving.surface.name(), distance).dark();
    }

    private Margin margin(Moving moving, double clearance) {
        double farther = clearance + Math.max(BEYOND, 2e-6 * clearance);
        DarknessProof.Moved beyond = places.moved(moving.faces, moving.surface.name(), farther);
        if (beyond.line().isPresent()) {
            WitnessRay line = beyond.line().get();
            Vector3D facing = NearestFace.of(moving.faces, line.to())
                    .face()
                    .piece()
                    .frame()
                    .normal();
            return new Margin(clearance, false, beyond.line(), limiting.of(line, facing));
        }
        String setBy = beyond.openEdge() >= 0 ? limiting.names(beyond.openEdge()) : "";
        return new Margin(clearance, false, beyond.open(), setBy);
    }
}
