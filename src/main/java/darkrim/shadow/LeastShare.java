package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.PriorityQueue;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The least share of the pupil that any point of a surface sees, between two bounds.
 *
 * <p>From above: the exact share at points of the surface ({@link VisiblePupil}). From below, for a piece of the surface: the share of the
 * pupil's pieces that are seen whole from all of it, each shaft being apart from every facet. The piece with the lowest bound is cut in two,
 * along the direction that raises the bound more, until the bounds are near enough (branch and bound). Immutable; safe for use by many
 * threads.
 */
public final class LeastShare {
    private final Scene scene;
    private final FacetTree tree;
    private final double[] corners;
    private final FacetEdges edges;
    private final Tolerance tolerance;
    private final VisiblePupil visible;
    private final int mostPieces;

    /**
     * Looks at up to 2,000 pieces.
     *
     * @param scene the scene
     * @param tree the tree over its facets
     */
    public LeastShare(Scene scene, FacetTree tree) {
        this(scene, tree, 2000);
    }

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param mostPieces most pieces of a surface looked at
     */
    public LeastShare(Scene scene, FacetTree tree, int mostPieces) {
        this.scene = scene;
        this.tree = tree;
        this.mostPieces = mostPieces;
        corners = scene.copyCorners();
        edges = new FacetEdges(scene);
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

    /**
     * The bounds for a surface.
     *
     * @param surface the surface
     * @param width the bounds may differ by this; by more if the most pieces have been looked at
     */
    public Bracket of(Surface surface, double width) {
        PriorityQueue<Piece> queue = new PriorityQueue<>(Comparator.comparingDouble(Piece::share));
        Lowest lowest = new Lowest();
        for (Face face : new FaceMerge(scene, surface, tolerance).pieces()) {
            lowest.look(face.piece());
            queue.add(new Piece(face, seenFromAll(face.piece(), width)));
        }
        int count = queue.size();
        while (count < mostPieces && queue.element().share < lowest.share - width) {
            Piece piece = queue.remove();
            List<Piece> halves = null;
            for (int axis = 0; axis < 2; axis++) {
                List<Piece> tried = new ArrayList<>();
                for (FlatPiece half : piece.face.piece().halves(axis)) {
                    double share = Math.max(piece.share, seenFromAll(half, width));
                    tried.add(new Piece(new Face(half, piece.face.plane()), share));
                }
                if (halves == null || least(tried) > least(halves)) {
                    halves = tried;
                }
            }
            for (Piece half : halves) {
                lowest.look(half.face.piece());
                queue.add(half);
                count++;
            }
        }
        return new Bracket(Math.min(queue.element().share, lowest.share), lowest.share, lowest.point);
    }

    private static double least(List<Piece> pieces) {
        return pieces.stream().mapToDouble(Piece::share).sum() / pieces.size();
    }

    private final class Lowest {
        private double share = Double.POSITIVE_INFINITY;
        private Vector3D point = Vector3D.ZERO;

        private void look(FlatPiece piece) {
            double[] middle = piece.middle();
            at(piece, middle[0], middle[1]);
            for (int i = 0; i < piece.size(); i++) {
                // Drawn in by a billionth: a point at the very rim lies on the planes of its neighbours.
                at(piece, piece.u(i) + 1e-9 * (middle[0] - piece.u(i)), piece.v(i) + 1e-9 * (middle[1] - piece.v(i)));
            }
        }

        private void at(FlatPiece piece, double u, double v) {
            Vector3D here = piece.frame().at(u, v);
            double seen = visible.from(here, piece.frame().normal()).areaFraction();
            if (seen < share) {
                share = seen;
                point = here;
            }
        }
    }

    /** The share of the pupil that is seen from every point of a piece: what is left when all that is not proved seen is taken off. */
    private double seenFromAll(FlatPiece piece, double width) {
        if (!(CoverCut.range(scene.beam().pupil().frame(), piece.space())[0] > tolerance.gap())) {
            return 0;
        }
        IsFullyLit lit =
                new IsFullyLit(scene, corners, edges, tolerance, new BlockedLine(scene, tree, corners, tolerance), "");
        SheetCut cut = new SheetCut(scene, corners, edges);
        PupilPieces pupil = new PupilPieces(
                scene.beam().pupil().outline(), scene.beam().pupil().frame(), tolerance);
        Deque<Open> waiting = new ArrayDeque<>();
        for (FlatPiece part : pupil.all()) {
            waiting.push(new Open(part, inTheWay(new Pair(part, piece, 0, tolerance).shaft())));
        }
        double whole = scene.beam().pupil().outline().area();
        double smallest = 0.1 * width * whole / scene.beam().pupil().outline().reach();
        double hidden = 0;
        while (!waiting.isEmpty() && hidden < whole) {
            Open open = waiting.pop();
            Pair pair = new Pair(open.part, piece, 0, tolerance);
            Shaft shaft = pair.shaft();
            boolean inFront = CoverCut.range(piece.frame(), open.part.space())[0] > tolerance.gap();
            int[] facets = stillInTheWay(shaft, open.facets);
            if (inFront && lit.holds(shaft, pair, facets)) {
                continue;
            }
            double size = open.part.extent();
            // Cells much smaller than the image of the piece through the opening gain nothing.
            double useful = Math.max(smallest, 0.02 * piece.extent() / shareOfWay(pair, lit));
            if (size < useful || cut.cuts(shaft, pair, facets)) {
                hidden += open.part.area();
            } else {
                for (FlatPiece half : pupil.halves(open.part)) {
                    waiting.push(new Open(half, facets));
                }
            }
        }
        return Math.max(0, 1 - hidden / whole);
    }

    private static final class Open {
        private final FlatPiece part;
        private final int[] facets;

        private Open(FlatPiece part, int[] facets) {
            this.part = part;
            this.facets = facets;
        }
    }

    /** Where on the way from the face (0) to the pupil (1) the first edge lies that keeps the pair open. */
    private double shareOfWay(Pair pair, IsFullyLit lit) {
        if (lit.openCount() == 0) {
            return 0.5;
        }
        Vector3D start = pair.face().middleInSpace();
        Vector3D way = pair.pupil().middleInSpace().subtract(start);
        double[] ends = edges.ends();
        int at = 6 * lit.open(0);
        Vector3D middle = Vector3D.of(
                0.5 * (ends[at] + ends[at + 3]),
                0.5 * (ends[at + 1] + ends[at + 4]),
                0.5 * (ends[at + 2] + ends[at + 5]));
        return Math.min(1, Math.max(1e-3, middle.subtract(start).dot(way) / way.normSq()));
    }

    private int[] inTheWay(Shaft shaft) {
        List<Integer> found = new ArrayList<>();
        tree.passing(shaft::mayTouch, found::add);
        return found.stream().mapToInt(f -> f).sorted().toArray();
    }

    private int[] stillInTheWay(Shaft shaft, int[] facets) {
        int[] left = new int[facets.length];
        int count = 0;
        double[] box = new double[6];
        for (int f : facets) {
            PairSearch.box(corners, f, box);
            if (shaft.mayTouch(box, 0)) {
                left[count++] = f;
            }
        }
        return Arrays.copyOf(left, count);
    }
}
