package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The share of the pupil that every point of a piece of a surface sees, from below: the pupil without every cell that is not proved to be seen
 * whole from all of the piece, each shaft being apart from every facet. Cells are cut along the edges of shadows first ({@link ShadowCut}). A
 * round pupil is held by cells that together reach beyond it, so that what is taken off is never too little. One use for each surface, one
 * thread.
 */
final class SeenFromAll {
    /** Cells are cut down to this share of the width that the bounds should come to. */
    private static final double CELL = 0.25;
    /** Cells much smaller than the image of the piece through the opening gain nothing. */
    private static final double USEFUL = 0.02;
    /** A pair may cost this many facets looked at and corners held against a plane, on average: a round surface behind round edges costs more. */
    private static final long STEPS_A_PAIR = 2_000;
    /** Covers the rounding of the sums. */
    private static final double ROUNDED_UP = 1 + 1e-9;

    private final Scene scene;
    private final FacetsInShaft inTheWay;
    private final FacetEdges edges;
    private final Tolerance tolerance;
    private final PupilPieces pupil;
    private final IsFullyLit lit;
    private final SheetCut cut;
    private final ShadowCut shadows;
    private final List<Circle> circles;
    private final double whole;
    private final long mostPairs;
    private final BooleanSupplier stop;
    private long pairs;

    /**
     * @param corners nine coordinates a facet; not changed
     * @param mostPairs most pairs looked at
     * @param stop whether to stop
     */
    SeenFromAll(
            Scene scene,
            FacetTree tree,
            double[] corners,
            FacetEdges edges,
            Tolerance tolerance,
            long mostPairs,
            BooleanSupplier stop) {
        this.scene = scene;
        this.inTheWay = new FacetsInShaft(scene, tree, corners, 0);
        this.edges = edges;
        this.tolerance = tolerance;
        this.mostPairs = mostPairs;
        this.stop = stop;
        pupil = new PupilPieces(
                scene.covering().pupil().outline(), scene.covering().pupil().frame(), tolerance);
        lit = new IsFullyLit(scene, corners, edges, tolerance, new BlockedLine(scene, tree, corners, tolerance), "");
        cut = new SheetCut(corners, edges);
        shadows = new ShadowCut(corners, scene.covering().pupil());
        circles = Circle.boundsOf(scene.covering().pupil().outline());
        whole = scene.covering().pupil().outline().area();
    }

    /** Whether it has done all the work that it may, or was stopped: from then on nothing counts as seen. */
    boolean isSpent() {
        return spent() >= 1 || stop.getAsBoolean();
    }

    /** Share of the work that has been done, 0 to 1, in pairs or in steps: counted, so that every machine ends at the same place. */
    double spent() {
        double steps = (double) (inTheWay.lookedAt() + shadows.steps()) / STEPS_A_PAIR;
        return Math.max((double) pairs, steps) / mostPairs;
    }

    /** A cell of the pupil that is not yet settled, and the facets in its shaft. */
    private static final class Open {
        private final FlatPiece part;
        private final int[] facets;

        private Open(FlatPiece part, int[] facets) {
            this.part = part;
            this.facets = facets;
        }
    }

    /**
     * The share, 0 to 1.
     *
     * @param width how near the true value it should be where the piece is small
     */
    double share(FlatPiece piece, double width) {
        pairs++;
        if (isSpent() || !(CoverCut.range(scene.covering().pupil().frame(), piece.space())[0] > tolerance.gap())) {
            return 0;
        }
        Deque<Open> waiting = new ArrayDeque<>();
        double hidden = 0;
        Vector3D facing = piece.frame().normal();
        double height = facing.dot(piece.frame().origin()) + 2 * tolerance.gap();
        for (FlatPiece part : pupil.all()) {
            FlatPiece front = part.clipToSpace(facing, height);
            hidden += front == part ? 0 : shareOf(part) - (front == null ? 0 : shareOf(front));
            if (front != null) {
                waiting.push(new Open(front, inTheWay.inBoxes(new Pair(front, piece, 0, tolerance).shaft())));
            }
        }
        double smallest =
                CELL * width * whole / scene.covering().pupil().outline().reach();
        while (!waiting.isEmpty() && hidden < 1) {
            if (isSpent()) {
                return 0;
            }
            pairs++;
            Open open = waiting.pop();
            Pair pair = new Pair(open.part, piece, 0, tolerance);
            Shaft shaft = pair.shaft();
            int[] facets = inTheWay.among(shaft, open.facets);
            boolean inFront = CoverCut.range(piece.frame(), open.part.space())[0] > tolerance.gap();
            if (inFront && lit.holds(shaft, pair, facets)) {
                continue;
            }
            double useful = Math.max(smallest, USEFUL * piece.extent() / shareOfWay(pair));
            List<FlatPiece> parts = inFront ? shadows.cut(open.part, piece, lit.blockers()) : List.of();
            if (parts.isEmpty() && (open.part.extent() < useful || cut.cuts(shaft, pair, facets))) {
                hidden += shareOf(open.part);
            } else {
                for (FlatPiece part : parts.isEmpty() ? pupil.halves(open.part) : parts) {
                    waiting.push(new Open(part, facets));
                }
            }
        }
        return Math.max(0, 1 - hidden * ROUNDED_UP);
    }

    /** The share of the pupil that lies in a cell, exactly; 0 where the cell lies outside its round outline. */
    private double shareOf(FlatPiece cell) {
        return new PupilView(scene.covering().pupil(), Vector3D.ZERO, Vector3D.ZERO, List.of(cell.plane()), circles, 0)
                .areaFraction();
    }

    /** Where on the way from the face (0) to the pupil (1) the edge lies that keeps the pair open and is nearest to the pupil. */
    private double shareOfWay(Pair pair) {
        Vector3D start = pair.face().middleInSpace();
        Vector3D way = pair.pupil().middleInSpace().subtract(start);
        double most = lit.openCount() == 0 ? 0.5 : 0;
        for (int i = 0; i < lit.openCount(); i++) {
            most = Math.max(most, edges.middle(lit.open(i)).subtract(start).dot(way) / way.normSq());
        }
        return Math.min(1, Math.max(1e-3, most));
    }
}
