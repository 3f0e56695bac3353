package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Signed margins of surfaces, each found by halving an interval on a proof, so that a positive margin is itself proved.
 *
 * <ul>
 *   <li><i>Shadow margin</i>: by how much a surface can be widened in its plane, in every direction, and stay dark. Where it is lit: how much
 *       must be cut from one side, the best of all, for the rest to be dark; negative.
 *   <li><i>Dark clearance</i>: how far it can be moved in any direction of space and stay dark.
 *   <li><i>Pupil margin</i>: by how much a surface can be widened in its plane and still see the whole pupil everywhere; where it does not:
 *       how much must be cut from all sides alike, negative.
 * </ul>
 *
 * <p>Immutable; safe for use by many threads.
 */
public final class Margins {
    /** An interval is halved down to this, mm. */
    private static final double FINENESS = 2e-8;

    private static final double FIRST_STEP = 0.01;
    /** Once the interval is this narrow, as a share of the margin, the direction in which the limit lies is known. */
    private static final double NEAR = 0.05;

    private static final double FARTHEST = 20;
    private static final double BEYOND = 1e-6;

    private final DarknessProof darkness;
    private final ClearanceSearch clearances;
    private final FullyLitProof fullyLit;
    private final LimitingEdge limiting;
    private final double farthest;

    /**
     * Margins up to 20 mm; a proof gives up after 300 pairs.
     *
     * @param scene the scene
     * @param tree the tree over its facets
     */
    public Margins(Scene scene, FacetTree tree) {
        this(scene, tree, new ProofSettings(1e-5, 300, ProofSettings.DEFAULT.gapWidth()), FARTHEST);
    }

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param settings how hard each proof tries
     * @param farthest margins are looked for up to this, mm
     */
    public Margins(Scene scene, FacetTree tree, ProofSettings settings, double farthest) {
        this.farthest = farthest;
        darkness = new DarknessProof(scene, tree, settings);
        fullyLit = new FullyLitProof(scene, tree, settings);
        Tolerance tolerance = Tolerance.of(scene.bound(), settings.gapWidth());
        limiting = new LimitingEdge(scene, FacetEdges.of(scene), tolerance);
        clearances = new ClearanceSearch(scene, tree, limiting, farthest);
    }

    /** What was found for faces of one size: whether it holds, and a line for which it does not. */
    private record Trial(boolean holds, Optional<WitnessRay> line) {}

    /** The shadow margin of a surface, mm. */
    public Margin shadow(Surface surface) {
        return margin(surface, false, faces -> dark(faces, surface));
    }

    /** The pupil margin of a surface, mm. */
    public Margin pupil(Surface surface) {
        return margin(surface, true, faces -> seesAll(faces, surface));
    }

    /**
     * The shadow margin at places on the rim of a flat surface: the middle of each side and each corner.
     *
     * @return empty if the surface is not one convex polygon
     */
    public List<RimMargin> shadowAlongRim(Surface surface) {
        return alongRim(surface, faces -> dark(faces, surface));
    }

    /**
     * The pupil margin at places on the rim of a flat surface: the middle of each side and each corner.
     *
     * @return empty if the surface is not one convex polygon
     */
    public List<RimMargin> pupilAlongRim(Surface surface) {
        return alongRim(surface, faces -> seesAll(faces, surface));
    }

    private Trial dark(List<Face> faces, Surface surface) {
        Darkness found = darkness.of(faces, surface.name());
        return new Trial(
                found instanceof Darkness.Dark,
                found instanceof Darkness.Lit lit ? Optional.of(lit.witness()) : Optional.empty());
    }

    private Trial seesAll(List<Face> faces, Surface surface) {
        FullyLitProof.Finding found = fullyLit.of(faces, surface.name());
        return new Trial(found.proved(), found.blocked());
    }

    private List<RimMargin> alongRim(Surface surface, Function<List<Face>, Trial> test) {
        List<Face> faces = darkness.faces(surface);
        List<RimMargin> found = new ArrayList<>();
        if (faces.size() == 1) {
            for (RimPlace place : RimPlace.of(faces.get(0))) {
                List<Face> here = place.face(0);
                Trial asItIs = test.apply(here);
                Margin margin = asItIs.holds ? room(here, test) : wayIn(place, asItIs, test);
                found.add(new RimMargin(place.point(), place.outward(), place.isCorner(), margin));
            }
        }
        return found;
    }

    /** How far in from a place on the rim the first place lies for which it holds. */
    private Margin wayIn(RimPlace place, Trial asItIs, Function<List<Face>, Trial> test) {
        double low = 0;
        double high = FIRST_STEP;
        Trial failed = asItIs;
        Trial trial = test.apply(place.face(high));
        while (!trial.holds && high < farthest) {
            failed = trial.line.isPresent() ? trial : failed;
            low = high;
            high = Math.min(farthest, 2 * high);
            trial = test.apply(place.face(high));
        }
        boolean capped = !trial.holds;
        while (!capped && high - low > FINENESS) {
            double middle = 0.5 * (low + high);
            trial = test.apply(place.face(middle));
            if (trial.holds) {
                high = middle;
            } else {
                low = middle;
                failed = trial.line.isPresent() ? trial : failed;
            }
        }
        return new Margin(-high, capped, failed.line, setBy(place.face(0), failed));
    }

    /**
     * The dark clearance of a surface: 0 if it is not proved dark; the shadow margin then says how far light intrudes. Proved, and within
     * 1e-7 mm or a millionth of the greatest that is proved with a few pairs of pieces; where many parts only together block, the true
     * clearance may be larger. The line of the margin is one that reaches the surface once it is moved a little farther.
     */
    public Margin clearance(Surface surface) {
        return clearances.of(surface);
    }

    /**
     * The least dark clearance of some surfaces, within 1e-6 mm: each of them is proved dark wherever it is moved within it.
     *
     * @param surfaces surfaces that are proved dark
     * @param stop asked between proofs whether to give up
     * @return the least, with the surface that has it; empty if there is no surface or the search was stopped
     */
    public Optional<Least> leastClearance(List<Surface> surfaces, BooleanSupplier stop) {
        return clearances.least(surfaces, stop);
    }

    /**
     * The deepest intrusion of light into some surfaces that are lit: the least of their shadow margins.
     *
     * @param surfaces flat surfaces that are lit
     * @param stop asked between surfaces whether to give up
     * @return the least, with the surface that has it; empty if there is no surface or the search was stopped
     */
    public Optional<Least> deepestIntrusion(List<Surface> surfaces, BooleanSupplier stop) {
        Optional<Least> deepest = Optional.empty();
        for (Surface surface : surfaces) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            if (deepest.isEmpty()
                    || !isDarkBeyond(surface, -deepest.get().margin().millimetres() + FINENESS)) {
                Margin margin = shadow(surface);
                if (deepest.isEmpty()
                        || margin.millimetres() < deepest.get().margin().millimetres()) {
                    deepest = Optional.of(new Least(surface, margin));
                }
            }
        }
        return deepest;
    }

    /** Whether a surface is dark once a strip of some depth is cut from one of its sides. */
    private boolean isDarkBeyond(Surface surface, double depth) {
        List<Face> faces = darkness.faces(surface);
        return Growth.sides(faces).stream().anyMatch(side -> {
            List<Face> left = Growth.cutBack(faces, List.of(side), depth);
            return left.isEmpty() || dark(left, surface).holds;
        });
    }

    /**
     * The least margin of several surfaces.
     *
     * @param surface the surface that has it
     * @param margin the margin
     */
    public record Least(Surface surface, Margin margin) {}

    /** Whether a surface lies in one plane: only then does a depth of intrusion mean anything. */
    public boolean isFlat(Surface surface) {
        return darkness.faces(surface).stream().map(Face::plane).distinct().count() == 1;
    }

    /** The point of a surface that is nearest to a point, mm. */
    public Vector3D nearestPoint(Surface surface, Vector3D point) {
        return NearestFace.of(darkness.faces(surface), point).point();
    }

    private Margin margin(Surface surface, boolean allSides, Function<List<Face>, Trial> test) {
        List<Face> faces = darkness.faces(surface);
        Trial asItIs = test.apply(faces);
        return asItIs.holds ? room(faces, test) : excess(faces, asItIs, test, allSides);
    }

    /** By how much the faces can be widened. */
    private Margin room(List<Face> faces, Function<List<Face>, Trial> test) {
        Growth growth = new Growth();
        double low = 0;
        double high = FIRST_STEP;
        Trial failed = test.apply(growth.grown(faces, high));
        while (failed.holds && high < farthest) {
            low = high;
            high = Math.min(farthest, 2 * high);
            failed = test.apply(growth.grown(faces, high));
        }
        if (failed.holds) {
            return new Margin(farthest, true, Optional.empty(), "");
        }
        while (high - low > FINENESS) {
            double middle = 0.5 * (low + high);
            Trial trial = test.apply(growth.grown(faces, middle));
            if (trial.holds) {
                low = middle;
                continue;
            }
            double before = high;
            high = middle;
            if (trial.line.isPresent()) {
                failed = trial;
                // Beyond a corner the polygon reaches farther than the disc that it stands for: the true distance may
                // be more.
                NearestFace off = NearestFace.of(faces, trial.line.get().to());
                double distance = Math.hypot(off.alongU(), off.alongV());
                if (distance > middle + FINENESS && distance < before - FINENESS && before - low < NEAR * before) {
                    growth.sharpen(off.alongU(), off.alongV());
                    high = distance;
                }
            }
        }
        // A little beyond the limit a line is found easily, and it is as good as the one that sets the limit.
        Trial beyond = test.apply(growth.grown(faces, low + BEYOND));
        Trial last = beyond.line.isPresent() ? beyond : failed;
        return new Margin(low, false, last.line, setBy(faces, last));
    }

    /** How much must be cut for the rest to hold: from one side, the best of all, or from all sides alike. */
    private Margin excess(List<Face> faces, Trial asItIs, Function<List<Face>, Trial> test, boolean allSides) {
        List<Side> sides = Growth.sides(faces);
        Margin best = null;
        for (List<Side> cut :
                allSides ? List.of(sides) : sides.stream().map(List::of).toList()) {
            double low = 0;
            double high = most(faces, cut);
            double most = high;
            Trial failed = asItIs;
            while (high - low > FINENESS && (best == null || low < -best.millimetres())) {
                double middle = 0.5 * (low + high);
                List<Face> left = Growth.cutBack(faces, cut, middle);
                Trial trial = left.isEmpty() ? new Trial(true, Optional.empty()) : test.apply(left);
                if (trial.holds) {
                    high = middle;
                } else {
                    low = middle;
                    failed = trial.line.isPresent() ? trial : failed;
                }
            }
            if (best == null || high < -best.millimetres()) {
                best = new Margin(-high, high > most - 2 * FINENESS, failed.line, setBy(faces, failed));
            }
        }
        return best;
    }

    /** By how much faces can be cut from some sides before nothing is left: at most the width along the first. */
    private static double most(List<Face> faces, List<Side> sides) {
        Side first = sides.get(0);
        return Growth.farthest(faces, first)
                + Growth.farthest(faces, new Side(first.direction().negate()));
    }

    private String setBy(List<Face> faces, Trial failed) {
        return failed.line
                .map(line -> limiting.of(
                        line,
                        NearestFace.of(faces, line.to()).face().piece().frame().normal()))
                .orElse("");
    }
}
