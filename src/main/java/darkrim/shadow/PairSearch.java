package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Cuts the pupil and the pieces of a surface until every pair is closed, a counterexample is found, or the pieces are too small. One use, one
 * thread.
 */
final class PairSearch {
    /** How often corners of the pupil polygon are cut off toward its round outline before a pair is cut in two. */
    private static final int TANGENT_ROUNDS = 3;

    /** A pair may cost this many facets looked at, on average: one among many thousands of facets costs more. */
    private static final long STEPS_A_PAIR = 20_000;
    /** The first pairs see far more than the average: all facets may be looked at this often beside. */
    private static final long STEPS_A_FACET = 64;

    private final Scene scene;
    private final double radius;
    private final ProofSettings settings;
    private final Tolerance tolerance;
    private final Question question;
    private final FacetEdges edges;
    private final FacetsInShaft facets;
    private final PupilPieces pupil;
    private final long mostSteps;

    private BooleanSupplier stop = () -> false;
    /** Of the faces at hand; none before there are any. */
    private CounterexampleSearch search;

    private int lastOpenEdge = -1;
    private Optional<WitnessRay> lastOpen = Optional.empty();
    private long pairs;

    /**
     * @param question what must hold
     * @param radius by how much the faces are grown, mm
     * @param corners nine coordinates a facet; not changed
     */
    PairSearch(
            Scene scene,
            FacetTree tree,
            double[] corners,
            FacetEdges edges,
            Tolerance tolerance,
            ProofSettings settings,
            Question question,
            double radius) {
        this.scene = scene;
        this.edges = edges;
        this.facets = new FacetsInShaft(scene, tree, corners, radius);
        this.tolerance = tolerance;
        this.settings = settings;
        this.question = question;
        this.radius = radius;
        mostSteps = STEPS_A_PAIR * settings.mostPairs() + STEPS_A_FACET * scene.facetCount();
        this.pupil = new PupilPieces(
                scene.covering().pupil().outline(), scene.covering().pupil().frame(), tolerance);
    }

    /** Asks before each face and each pair whether to give up: what is left then counts as open. */
    PairSearch stoppedBy(BooleanSupplier asked) {
        stop = asked;
        return this;
    }

    /** A piece of the pupil that is not closed for the face at hand, and the facets in its shaft. */
    private static final class Task {
        private final FlatPiece pupil;
        private final int[] facets;

        private Task(FlatPiece pupil, int[] facets) {
            this.pupil = pupil;
            this.facets = facets;
        }
    }

    private enum Outcome {
        CLOSED,
        CUT_PUPIL,
        CUT_FACE,
        TOO_SMALL
    }

    /** An edge that keeps the last pair open that could be cut no further, or -1. */
    int lastOpenEdge() {
        return lastOpenEdge;
    }

    /** The line between the middles of the last pair that could be cut no further, if there was one. It need not be clear. */
    Optional<WitnessRay> lastOpen() {
        return lastOpen;
    }

    /** Pairs looked at so far. */
    long pairs() {
        return pairs;
    }

    /** The line for which it does not hold, if one was found. */
    Optional<WitnessRay> witness() {
        return search == null ? Optional.empty() : search.found();
    }

    /** Area of the pieces for which nothing is proved, mm2; stops at the first counterexample. */
    double open(List<Face> faces) {
        double open = 0;
        search = new CounterexampleSearch(scene, question, pupil, edges, radius, faces);
        for (Face face : faces) {
            if (search.found().isEmpty()) {
                open += facets.lookedAt() > mostSteps || stop.getAsBoolean() ? unproved(face) : open(face);
            }
        }
        return open;
    }

    private double open(Face whole) {
        // What lies behind the pupil gets no light from it.
        Vector3D normal = scene.covering().pupil().frame().normal();
        double depth = normal.dot(scene.covering().pupil().frame().origin());
        FlatPiece piece = whole.piece().clipToSpace(normal, depth - radius);
        if (piece == null) {
            return 0;
        }
        Face face = new Face(piece, whole.plane());
        List<Task> tasks = new ArrayList<>();
        Vector3D facing = piece.frame().normal();
        double height = facing.dot(piece.frame().origin());
        for (FlatPiece part : pupil.all()) {
            FlatPiece seen = part.clipToSpace(facing, height - radius - tolerance.rounding());
            if (seen != null && highest(face, seen) > tolerance.flat() - radius) {
                tasks.add(new Task(seen, facets.of(new Pair(seen, piece, radius, tolerance).shaft(), face)));
            }
        }
        for (Task task : tasks) {
            search.atCorners(face, task.pupil);
        }
        return search.found().isPresent() ? 0 : open(face, tasks);
    }

    /** A pupil piece that lies in the plane of the face shines along it, not on it. */
    private static double highest(Face face, FlatPiece pupilPiece) {
        return CoverCut.range(face.piece().frame(), pupilPiece.space())[1];
    }

    private double open(Face face, List<Task> tasks) {
        Deque<Task> waiting = new ArrayDeque<>(tasks);
        List<Task> left = new ArrayList<>();
        while (!waiting.isEmpty()) {
            if (++pairs > settings.mostPairs() || facets.lookedAt() > mostSteps || stop.getAsBoolean()) {
                return unproved(face);
            }
            search.scan(pairs);
            if (search.found().isPresent()) {
                return 0;
            }
            Task task = waiting.pop();
            Outcome outcome = judge(face, task);
            if (search.found().isPresent() || outcome == Outcome.TOO_SMALL) {
                return unproved(face);
            }
            if (outcome == Outcome.CUT_PUPIL) {
                for (FlatPiece half : pupil.halves(task.pupil)) {
                    waiting.push(new Task(half, task.facets));
                }
            } else if (outcome == Outcome.CUT_FACE) {
                left.add(task);
            }
        }
        if (left.isEmpty()) {
            return 0;
        }
        double open = 0;
        for (FlatPiece half : face.piece().halves()) {
            if (search.found().isEmpty()) {
                open += open(new Face(half, face.plane()), left);
            }
        }
        return open;
    }

    /** More than 0 also for a sliver whose area is lost in rounding. */
    private static double unproved(Face face) {
        return Math.max(face.piece().area(), Double.MIN_NORMAL);
    }

    private Outcome judge(Face face, Task task) {
        FlatPiece pupilPiece = task.pupil;
        int[] inTheWay = task.facets;
        Pair pair = new Pair(pupilPiece, face.piece(), radius, tolerance);
        for (int round = 0; ; round++) {
            Shaft shaft = pair.shaft();
            inTheWay = facets.among(shaft, inTheWay);
            if (question.holds(shaft, pair, inTheWay)) {
                return Outcome.CLOSED;
            }
            FlatPiece tighter = round < TANGENT_ROUNDS ? tighter(shaft, pupilPiece) : pupilPiece;
            if (tighter == null) {
                return Outcome.CLOSED;
            }
            if (tighter == pupilPiece) {
                return question.holdsAfterAll(shaft, pair, inTheWay) ? Outcome.CLOSED : cut(face, pair, shaft);
            }
            pupilPiece = tighter;
            pair = new Pair(pupilPiece, face.piece(), radius, tolerance);
        }
    }

    /** The pupil piece cut by tangents where the edges in the way ask for it. */
    private FlatPiece tighter(Shaft shaft, FlatPiece piece) {
        FlatPiece left = piece;
        for (int i = 0; i < Math.min(CounterexampleSearch.EDGES, question.openCount()) && left != null; i++) {
            int side = shaft.nearestSide(edges.ends(), 6 * question.open(i));
            if (side >= 0) {
                left = pupil.tangentCut(left, shaft.side(side));
            }
        }
        return left;
    }

    private Outcome cut(Face face, Pair pair, Shaft shaft) {
        search.alongEdges(face, pair, shaft);
        double share = shareOfWay(pair);
        double faceSize = pair.face().extent() * (1 - share);
        double pupilSize = pair.pupil().extent() * share;
        if (Math.max(faceSize, pupilSize) < settings.smallestPiece()) {
            lastOpenEdge = question.openCount() > 0 ? question.open(0) : -1;
            lastOpen = Optional.of(
                    new WitnessRay(pair.pupil().middleInSpace(), pair.face().middleInSpace(), ""));
            return Outcome.TOO_SMALL;
        }
        return faceSize >= pupilSize ? Outcome.CUT_FACE : Outcome.CUT_PUPIL;
    }

    /** Where on the way from the face (0) to the pupil (1) the edges lie that keep the pair open. */
    private double shareOfWay(Pair pair) {
        Vector3D start = pair.face().middleInSpace();
        Vector3D way = pair.pupil().middleInSpace().subtract(start);
        double sum = 0;
        int count = question.openCount();
        for (int i = 0; i < count; i++) {
            double share = edges.middle(question.open(i)).subtract(start).dot(way) / way.normSq();
            sum += Math.min(0.999, Math.max(0.001, share));
        }
        return count == 0 ? 0.5 : sum / count;
    }
}
