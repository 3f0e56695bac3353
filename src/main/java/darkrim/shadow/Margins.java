package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.BiPredicate;
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
    /** Margins are looked for up to this, mm. */
    public static final double FARTHEST = 20;

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
        this(scene, tree, () -> false);
    }

    /**
     * The same, with proofs that give up when they are asked to.
     *
     * @param scene the scene
     * @param tree the tree over its facets
     * @param stop whether to give up, asked often and from any thread, and true for good once it is: a margin that was still looked for then is
     *     wrong, and must be thrown away, as the searches over several surfaces do
     */
    public Margins(Scene scene, FacetTree tree, BooleanSupplier stop) {
        this(scene, tree, new ProofSettings(1e-5, 300, ProofSettings.DEFAULT.gapWidth()), FARTHEST, stop);
    }

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param settings how hard each proof tries
     * @param farthest margins are looked for up to this, mm
     */
    public Margins(Scene scene, FacetTree tree, ProofSettings settings, double farthest) {
        this(scene, tree, settings, farthest, () -> false);
    }

    private Margins(Scene scene, FacetTree tree, ProofSettings settings, double farthest, BooleanSupplier stop) {
        this.farthest = farthest;
        darkness = new DarknessProof(scene, tree, settings, stop);
        fullyLit = new FullyLitProof(scene, tree, settings, stop);
        Tolerance tolerance = Tolerance.of(scene.bound(), settings.gapWidth());
        limiting = new LimitingEdge(scene, FacetEdges.of(scene), tolerance);
        NearestLight nearest = new NearestLight(scene, tree, FacetEdges.of(scene), tolerance, stop);
        clearances = new ClearanceSearch(scene, tree, limiting, nearest, farthest, stop);
    }

    /** The shadow margin of a surface, mm. */
    public Margin shadow(Surface surface) {
        return shadow(surface, OptionalDouble.empty());
    }

    private Margin shadow(Surface surface, OptionalDouble guess) {
        return search(darkness.faces(surface), faces -> dark(faces, surface)).margin(false, guess);
    }

    /** The pupil margin of a surface, mm. */
    public Margin pupil(Surface surface) {
        return pupil(surface, OptionalDouble.empty());
    }

    private Margin pupil(Surface surface, OptionalDouble guess) {
        return search(darkness.faces(surface), faces -> seesAll(faces, surface)).margin(true, guess);
    }

    private WidthSearch search(List<Face> faces, Function<List<Face>, WidthSearch.Trial> test) {
        return new WidthSearch(faces, test, limiting, farthest);
    }

    private WidthSearch.Trial dark(List<Face> faces, Surface surface) {
        Darkness found = darkness.of(faces, surface.name());
        return new WidthSearch.Trial(
                found instanceof Darkness.Dark,
                found instanceof Darkness.Lit lit ? Optional.of(lit.witness()) : Optional.empty());
    }

    private WidthSearch.Trial seesAll(List<Face> faces, Surface surface) {
        FullyLitProof.Finding found = fullyLit.of(faces, surface.name());
        return new WidthSearch.Trial(found.proved(), found.blocked());
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
     * @param guess where to begin
     * @param stop asked between proofs whether to give up
     * @return the least, with the surface that has it; empty if there is no surface or the search was stopped
     */
    public Optional<Least> leastClearance(List<Surface> surfaces, Optional<MarginGuess> guess, BooleanSupplier stop) {
        return clearances.least(surfaces, guess, stop);
    }

    /** The same without a guess. */
    public Optional<Least> leastClearance(List<Surface> surfaces, BooleanSupplier stop) {
        return leastClearance(surfaces, Optional.empty(), stop);
    }

    /**
     * The deepest intrusion of light into some surfaces that are lit: the least of their shadow margins.
     *
     * @param surfaces flat surfaces that are lit
     * @param guess where to begin
     * @param stop asked between surfaces whether to give up
     * @return the least, with the surface that has it; empty if there is no surface or the search was stopped
     */
    public Optional<Least> deepestIntrusion(List<Surface> surfaces, Optional<MarginGuess> guess, BooleanSupplier stop) {
        return least(
                surfaces,
                guess,
                stop,
                this::shadow,
                (surface, least) -> isDarkBeyond(surface, -least + WidthSearch.FINENESS));
    }

    /** The same without a guess. */
    public Optional<Least> deepestIntrusion(List<Surface> surfaces, BooleanSupplier stop) {
        return deepestIntrusion(surfaces, Optional.empty(), stop);
    }

    /**
     * The least pupil margin of some surfaces.
     *
     * @param surfaces flat surfaces
     * @param guess where to begin
     * @param stop asked between surfaces whether to give up
     * @return the least, with the surface that has it; empty if there is no surface or the search was stopped
     */
    public Optional<Least> leastPupil(List<Surface> surfaces, Optional<MarginGuess> guess, BooleanSupplier stop) {
        return least(
                surfaces,
                guess,
                stop,
                this::pupil,
                (surface, least) -> seesAllWithin(surface, least - WidthSearch.FINENESS));
    }

    private static Optional<Least> least(
            List<Surface> surfaces,
            Optional<MarginGuess> guess,
            BooleanSupplier stop,
            BiFunction<Surface, OptionalDouble, Margin> measure,
            BiPredicate<Surface, Double> hasNoLess) {
        Optional<Least> found = Optional.empty();
        for (Surface surface : likelyFirst(surfaces, guess)) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            double least = found.map(known -> known.margin().millimetres()).orElse(Double.POSITIVE_INFINITY);
            if (found.isEmpty() || !hasNoLess.test(surface, least)) {
                OptionalDouble near = guess.isPresent() && guess.get().surface().equals(surface.name())
                        ? OptionalDouble.of(guess.get().millimetres())
                        : found.isPresent() ? OptionalDouble.of(least) : OptionalDouble.empty();
                Margin margin = measure.apply(surface, near);
                if (margin.millimetres() < least) {
                    found = Optional.of(new Least(surface, margin));
                }
            }
        }
        return stop.getAsBoolean() ? Optional.empty() : found;
    }

    /** Surfaces with the one in front that is likely to matter. */
    static List<Surface> likelyFirst(List<Surface> surfaces, Optional<MarginGuess> guess) {
        List<Surface> order = new ArrayList<>(surfaces);
        guess.ifPresent(likely -> surfaces.stream()
                .filter(surface -> surface.name().equals(likely.surface()))
                .forEach(surface -> {
                    order.remove(surface);
                    order.add(0, surface);
                }));
        return order;
    }

    /** Whether a surface is dark once a strip of some depth is cut from one of its sides. */
    private boolean isDarkBeyond(Surface surface, double depth) {
        List<Face> faces = darkness.faces(surface);
        return Growth.sides(faces).stream().anyMatch(side -> {
            List<Face> left = Growth.cutBack(faces, List.of(side), depth);
            return left.isEmpty() || dark(left, surface).holds();
        });
    }

    /** Whether all of the pupil is seen from all of a surface, widened by some distance or, if that is negative, cut back from all sides. */
    private boolean seesAllWithin(Surface surface, double distance) {
        List<Face> faces = darkness.faces(surface);
        List<Face> changed = distance > 0
                ? new Growth().grown(faces, distance)
                : Growth.cutBack(faces, Growth.sides(faces), -distance);
        return changed.isEmpty() || seesAll(changed, surface).holds();
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
}
