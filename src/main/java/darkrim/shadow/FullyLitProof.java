package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * Proves that every point of a surface sees the whole pupil, inside the field limit, or finds a line that is blocked.
 *
 * <p>The same cutting as in {@link DarknessProof}; a pair is closed when every facet is apart from its shaft. Immutable; safe for use by many
 * threads.
 */
public final class FullyLitProof {
    private final Scene scene;
    private final FacetTree tree;
    private final double[] corners;
    private final FacetEdges edges;
    private final Tolerance tolerance;
    private final ProofSettings settings;
    private final BooleanSupplier stop;

    /** Proofs that are never stopped. */
    public FullyLitProof(Scene scene, FacetTree tree, ProofSettings settings) {
        this(scene, tree, settings, () -> false);
    }

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param settings how hard to try
     * @param stop whether to give up, asked often and from any thread: what is not proved by then is left open
     */
    public FullyLitProof(Scene scene, FacetTree tree, ProofSettings settings, BooleanSupplier stop) {
        this.stop = stop;
        this.scene = scene;
        this.tree = tree;
        this.settings = settings;
        corners = scene.corners();
        edges = FacetEdges.of(scene);
        tolerance = Tolerance.of(scene.bound(), settings.gapWidth());
    }

    /**
     * What is known about the pupil as seen from a surface.
     *
     * @param proved whether every point sees the whole pupil
     * @param blocked a line from the pupil to the surface that is blocked, if one was found
     * @param openFraction share of the surface for which nothing is proved, 0 to 1
     */
    public record Finding(boolean proved, Optional<WitnessRay> blocked, double openFraction) {}

    /** What is known about the pupil as seen from a surface. */
    public Finding of(Surface surface) {
        return of(new FaceMerge(scene, surface, tolerance).pieces(), surface.name());
    }

    /** The same for faces that need not be there. */
    Finding of(List<Face> faces, String name) {
        if (!faces.stream().allMatch(this::isBeforeThePupil)) {
            return new Finding(false, Optional.empty(), 1);
        }
        BlockedLine lines = new BlockedLine(scene, tree, corners, tolerance);
        Question question = new IsFullyLit(scene, corners, edges, tolerance, lines, name);
        PairSearch search =
                new PairSearch(scene, tree, corners, edges, tolerance, settings, question, 0).stoppedBy(stop);
        double open = search.open(faces);
        double whole = faces.stream().mapToDouble(face -> face.piece().area()).sum();
        boolean proved = open == 0 && search.witness().isEmpty();
        return new Finding(proved, search.witness(), proved ? 0 : Math.min(1, open / whole));
    }

    /** Each sees the other from the front; otherwise part of the pupil is hidden by the surface itself. */
    private boolean isBeforeThePupil(Face face) {
        double depth =
                CoverCut.range(scene.covering().pupil().frame(), face.piece().space())[0];
        PupilPieces pupil = new PupilPieces(
                scene.covering().pupil().outline(), scene.covering().pupil().frame(), tolerance);
        double height = pupil.all().stream()
                .mapToDouble(piece -> CoverCut.range(face.piece().frame(), piece.space())[0])
                .min()
                .orElse(0);
        return depth > tolerance.gap() && height > tolerance.gap();
    }
}
