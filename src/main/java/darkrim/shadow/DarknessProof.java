package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * Proves that no direct light reaches a whole surface, or finds a line that light takes.
 *
 * <p>The pupil and the surface are covered by convex pieces. A pair of pieces is closed when all its lines are blocked, by a sheet of facets
 * ({@link SheetCut}) or by the material in a plane ({@link CoverCut}), when the face is turned away, or when the lines miss the field limit
 * ({@link FieldExclusion}). Pairs that are not closed are cut in two, down to a smallest piece. Every step errs to the safe side: a proof can
 * be missed, never wrong; docs/proof-of-darkness.md has the argument.
 *
 * <p>Immutable; safe for use by many threads.
 */
public final class DarknessProof {
    private final Scene scene;
    private final FacetTree tree;
    private final double[] corners;
    private final FacetEdges edges;
    private final Tolerance tolerance;
    private final ProofSettings settings;
    private final BooleanSupplier stop;

    /** Proofs with {@link ProofSettings#DEFAULT}. */
    public DarknessProof(Scene scene, FacetTree tree) {
        this(scene, tree, ProofSettings.DEFAULT);
    }

    /** Proofs that are never stopped. */
    public DarknessProof(Scene scene, FacetTree tree, ProofSettings settings) {
        this(scene, tree, settings, () -> false);
    }

    /**
     * Proofs for the surfaces of a scene.
     *
     * @param scene the scene
     * @param tree the tree over its facets
     * @param settings how hard to try
     * @param stop whether to give up, asked often and from any thread: what is not proved by then is left open
     */
    public DarknessProof(Scene scene, FacetTree tree, ProofSettings settings, BooleanSupplier stop) {
        this.scene = scene;
        this.tree = tree;
        this.settings = settings;
        this.stop = stop;
        corners = scene.corners();
        edges = FacetEdges.of(scene);
        tolerance = Tolerance.of(scene.bound(), settings.gapWidth());
    }

    /** What is known about direct light on a surface. */
    public Darkness of(Surface surface) {
        return of(faces(surface), surface.name());
    }

    /**
     * What was found for faces that are moved to anywhere within a distance.
     *
     * @param dark whether they are proved dark wherever they are
     * @param line a line of light that reaches one of them, if one was found
     * @param openEdge an edge that keeps the proof open, or -1
     * @param open the line between the middles of the pieces at which the proof ended, if they were cut to the smallest
     */
    record Moved(boolean dark, Optional<WitnessRay> line, int openEdge, Optional<WitnessRay> open) {}

    /** What is known about faces that are moved to anywhere within a distance, mm, without turning. */
    Moved moved(List<Face> faces, String name, double distance) {
        PairSearch search = search(name, distance);
        double open = search.open(cut(faces).all());
        return new Moved(
                open == 0 && search.witness().isEmpty(), search.witness(), search.lastOpenEdge(), search.lastOpen());
    }

    /** The faces of a surface. */
    List<Face> faces(Surface surface) {
        return new FaceMerge(scene, surface, tolerance).pieces();
    }

    /** What is known about direct light on faces that need not be there. */
    Darkness of(List<Face> faces, String name) {
        FacePieces pieces = cut(faces);
        PairSearch search = search(name, 0);
        double open = search.open(pieces.open());
        Darkness.Effort effort = new Darkness.Effort(search.pairs(), pieces.contactArea(), tolerance.gap());
        Optional<WitnessRay> witness = search.witness();
        if (witness.isPresent()) {
            return new Darkness.Lit(witness.get(), effort);
        }
        double whole = faces.stream().mapToDouble(face -> face.piece().area()).sum();
        return open > 0 ? new Darkness.Undecided(open, Math.min(1, open / whole), effort) : new Darkness.Dark(effort);
    }

    private FacePieces cut(List<Face> faces) {
        return new FacePieces(scene, tree, corners, edges, faces, tolerance, stop);
    }

    private PairSearch search(String name, double radius) {
        ClearLine lines = new ClearLine(scene, tree, corners, tolerance);
        Question question = new IsDark(scene, corners, edges, tolerance, Optional.of(lines), name);
        return new PairSearch(scene, tree, corners, edges, tolerance, settings, question, radius).stoppedBy(stop);
    }
}
