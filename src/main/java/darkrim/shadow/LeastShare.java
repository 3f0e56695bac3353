package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.BooleanSupplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The least share of the pupil that any point of a surface sees, between two bounds.
 *
 * <p>From above: the exact share at points of the surface ({@link VisiblePupil}). From below, for a piece of the surface: the share of the
 * pupil that is seen whole from all of it ({@link SeenFromAll}). The piece with the lowest bound is cut in two, along the direction that
 * raises the bound more, until the bounds are near enough (branch and bound). What is cut away of the pupil by the field limit, or lies
 * behind the surface, is not seen. Immutable; safe for use by many threads.
 */
public final class LeastShare {
    /** Cells are never asked to settle a share to less than this. */
    private static final double FINEST = 1e-5;
    /** How near the bounds should come to show where the worst point is, once it is known on which side of the limit it lies. */
    private static final double NEAR = 0.001;
    /** Share of the work that this is worth. */
    private static final double FOR_THE_WORST = 0.2;

    private final Scene scene;
    private final FacetTree tree;
    private final FacetEdges edges;
    private final double[] corners;
    private final Tolerance tolerance;
    private final VisiblePupil visible;
    private final long mostPairs;

    /**
     * Looks at up to 50,000 pairs of pieces for each surface.
     *
     * @param scene the scene
     * @param tree the tree over its facets
     */
    public LeastShare(Scene scene, FacetTree tree) {
        this(scene, tree, 50_000);
    }

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param mostPairs most pairs of a piece of a surface and a piece of the pupil looked at for one surface
     */
    public LeastShare(Scene scene, FacetTree tree, long mostPairs) {
        this.scene = scene;
        this.tree = tree;
        this.mostPairs = mostPairs;
        corners = scene.corners();
        edges = FacetEdges.of(scene);
        tolerance = Tolerance.of(scene.bound(), ProofSettings.DEFAULT.gapWidth());
        visible = new VisiblePupil(scene, tree);
    }

    /**
     * Bounds of the least share.
     *
     * @param atLeast every point sees at least this share of the pupil, 0 to 1: proved
     * @param atMost the point sees this share
     * @param point a point of the surface, mm
     */
    public record Bracket(double atLeast, double atMost, Vector3D point) {}

    private record Piece(Face face, double share) {}

    /** How near the bounds must still come. */
    private interface Goal {
        /**
         * Width that the bounds should come to, or 0 if they are near enough.
         *
         * @param spent share of the work that has been done, 0 to 1
         */
        double width(double low, double high, double spent);
    }

    /**
     * The bounds for a surface.
     *
     * @param surface the surface
     * @param width the bounds may differ by this; by more if the most pairs have been looked at
     */
    public Bracket of(Surface surface, double width) {
        return ofPupil(search(surface, (low, high, spent) -> high - low > width ? width : 0, () -> false));
    }

    /**
     * Bounds that tell on which side of a limit the least share lies, and if it is below, about where; they do not tell if the most pairs have
     * been looked at, or it was stopped.
     *
     * @param surface the surface
     * @param limit the limit, 0 to 1
     * @param stop whether to stop and keep what is known
     */
    public Bracket against(Surface surface, double limit, BooleanSupplier stop) {
        double asked = onStraight(limit);
        Goal goal = (low, high, spent) -> {
            if (low >= asked || high < asked) {
                return high - low > NEAR && spent < FOR_THE_WORST ? NEAR : 0;
            }
            return Math.max(FINEST, 0.5 * (high - asked));
        };
        return ofPupil(search(surface, goal, stop));
    }

    /**
     * Bounds that tell on which side of a limit the least share lies, and come no nearer than that takes.
     *
     * @param surface the surface
     * @param limit the limit, 0 to 1
     * @param stop whether to stop and keep what is known
     */
    public Bracket sideOf(Surface surface, double limit, BooleanSupplier stop) {
        double asked = onStraight(limit);
        Goal goal = (low, high, spent) -> low >= asked || high < asked ? 0 : Math.max(FINEST, 0.5 * (high - asked));
        return ofPupil(search(surface, goal, stop));
    }

    /** The area of the pupil of straight lines over that of the pupil: 1 without a window. */
    private double excess() {
        return scene.covering().pupil().outline().area()
                / scene.beam().pupil().outline().area();
    }

    /**
     * Bounds for the pupil from those for the wider one of straight lines, through a window: ways draw together above it ({@link
     * darkrim.scene.Window#excess} never falls), so no part of the pupil has more area than the part of the wider one for which it stands.
     */
    private Bracket ofPupil(Bracket straight) {
        if (scene.beam().window().isEmpty()) {
            return straight;
        }
        double excess = excess();
        return new Bracket(
                Math.max(0, 1 - (1 - straight.atLeast) * excess),
                Math.min(1, straight.atMost * excess),
                straight.point);
    }

    /** The share of the wider pupil from which on a limit surely holds. */
    private double onStraight(double limit) {
        return scene.beam().window().isEmpty() ? limit : 1 - (1 - limit) / excess();
    }

    private Bracket search(Surface surface, Goal goal, BooleanSupplier stop) {
        SeenFromAll seen = new SeenFromAll(scene, tree, corners, edges, tolerance, mostPairs, stop);
        PriorityQueue<Piece> queue = new PriorityQueue<>(Comparator.comparingDouble(Piece::share));
        LowestPoint lowest = new LowestPoint(visible, stop);
        List<Face> faces = new FaceMerge(scene, surface, tolerance).pieces();
        faces.forEach(face -> lowest.look(face.piece()));
        double first = Math.max(FINEST, goal.width(0, lowest.share(), 0));
        faces.forEach(face -> queue.add(new Piece(face, seen.share(face.piece(), first))));
        while (!seen.isSpent()) {
            double width = goal.width(queue.element().share, lowest.share(), seen.spent());
            if (width == 0) {
                break;
            }
            for (Piece half : halves(queue.remove(), seen, width)) {
                lowest.look(half.face.piece());
                queue.add(half);
            }
        }
        return new Bracket(Math.min(queue.element().share, lowest.share()), lowest.share(), lowest.point());
    }

    /** The halves across the direction that raises the bound more. */
    private static List<Piece> halves(Piece piece, SeenFromAll seen, double width) {
        List<Piece> best = List.of();
        double most = -1;
        for (int axis = 0; axis < 2; axis++) {
            List<Piece> tried = new ArrayList<>();
            double sum = 0;
            for (FlatPiece half : piece.face.piece().halves(axis)) {
                double share = Math.max(piece.share, seen.share(half, width));
                tried.add(new Piece(new Face(half, piece.face.plane()), share));
                sum += share;
            }
            if (sum / tried.size() > most) {
                most = sum / tried.size();
                best = tried;
            }
        }
        return best;
    }
}
