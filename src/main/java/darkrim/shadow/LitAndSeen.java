package darkrim.shadow;

import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Proves that no point of a face is both in straight sight of a receiver and reached, straight through an entrance, by light at or beyond an
 * angle off axis; or finds a point that is both.
 *
 * <p>A face is cut in two until each piece is proved unseen or proved unlit, each by the same cuts as a {@link DarknessProof}: unseen with the
 * receiver in the place of the pupil. Immutable; safe for use by many threads.
 */
public final class LitAndSeen {
    /** A proof for one piece of many. Most pieces that can be proved are so at once. */
    private static final int PAIRS = 200;

    /** Most pieces of a face that are looked at; vanes with a clearance of 0.05 mm need some twenty. */
    private static final int MOST_PIECES = 1_000;

    private static final int DIRECTIONS = 32;
    private static final double[] SHARES = {1 - 1e-9, 0.75, 0.5, 0.25, 0};

    private final Scene lighting;
    private final Scene sight;
    private final FacetTree tree;
    private final double[] corners;
    private final FacetEdges edges;
    private final Tolerance tolerance;
    private final ProofSettings settings;
    private final double angle;

    /**
     * @param scene the scene; its own beam does not matter
     * @param tree the tree over its facets
     * @param entrance what light comes in through, a disc; its normal points inward and is the axis
     * @param angle the least angle off axis, degrees, 0 to below 90
     * @param receiver what must not see a lit point, a disc; its normal points toward the entrance
     */
    public LitAndSeen(Scene scene, FacetTree tree, Pupil entrance, double angle, Pupil receiver) {
        if (!(angle >= 0 && angle < 90)) {
            throw new IllegalArgumentException("an angle off axis lies from 0 to below 90 degrees, got " + angle);
        }
        lighting = scene.under(Beam.of(entrance));
        sight = scene.under(Beam.of(receiver));
        this.tree = tree;
        this.angle = angle;
        corners = scene.corners();
        edges = FacetEdges.of(scene);
        settings = new ProofSettings(ProofSettings.DEFAULT.smallestPiece(), PAIRS, ProofSettings.DEFAULT.gapWidth());
        double bound = Math.max(lighting.bound(), sight.bound());
        tolerance = Tolerance.of(bound, settings.gapWidth());
    }

    /** What is known about a face. */
    public sealed interface Found {}

    /**
     * No point is both lit and seen: proved.
     *
     * @param pieces pieces that were looked at: proved unlit or unseen, or cut in two
     */
    public record Apart(int pieces) implements Found {}

    /**
     * A point is both.
     *
     * @param lit a line of light to it, at or beyond the angle
     * @param seen a line from the receiver to the same point
     */
    public record Both(WitnessRay lit, WitnessRay seen) implements Found {}

    /**
     * Neither proved nor found.
     *
     * @param area area of the pieces that no proof was found for, mm2
     */
    public record Open(double area) implements Found {}

    /**
     * What is known about the flat pieces of a surface whose facets all lie within a range.
     *
     * @param surface the surface
     * @param first its first facet in the range
     * @param count how many facets
     */
    public Found of(Surface surface, int first, int count) {
        Surface part = new Surface(
                surface.index(),
                surface.name(),
                surface.finish(),
                first,
                count,
                surface.back(),
                surface.area(),
                Optional.empty(),
                surface.place());
        Search search = new Search(surface.name());
        List<Face> faces = new FaceMerge(lighting, part, tolerance).pieces();
        for (Face face : faces) {
            search.judge(face);
            if (search.both.isPresent()) {
                return search.both.get();
            }
        }
        return search.open > 0 ? new Open(search.open) : new Apart(search.pieces);
    }

    /** The search over one surface. One use, one thread. */
    private final class Search {
        private final Question lightQuestion;
        private final Question sightQuestion;
        private Optional<Both> both = Optional.empty();
        private double open;
        private int pieces;

        private Search(String surface) {
            ClearLine light = new ClearLine(lighting, tree, corners, tolerance);
            ClearLine line = new ClearLine(sight, tree, corners, tolerance);
            lightQuestion = new IsDarkBeyond(
                    new IsDark(lighting, corners, edges, tolerance, Optional.of(light), surface),
                    lighting.covering().pupil().frame(),
                    angle,
                    tolerance);
            sightQuestion = new IsDark(sight, corners, edges, tolerance, Optional.of(line), surface);
        }

        private void judge(Face face) {
            if (both.isPresent()) {
                return;
            }
            PairSearch lit = search(lighting, lightQuestion);
            if (lit.open(List.of(face)) == 0 && lit.witness().isEmpty()) {
                pieces++;
                return;
            }
            PairSearch seen = search(sight, sightQuestion);
            if (seen.open(List.of(face)) == 0 && seen.witness().isEmpty()) {
                pieces++;
                return;
            }
            lit.witness().ifPresent(ray -> tryPoint(face, ray.to()));
            seen.witness().ifPresent(ray -> tryPoint(face, ray.to()));
            tryPoint(face, face.piece().middleInSpace());
            if (both.isPresent()) {
                return;
            }
            if (face.piece().extent() < settings.smallestPiece() || ++pieces > MOST_PIECES) {
                open += Math.max(face.piece().area(), Double.MIN_NORMAL);
                return;
            }
            for (FlatPiece half : face.piece().halves()) {
                judge(new Face(half, face.plane()));
            }
        }

        private PairSearch search(Scene scene, Question question) {
            return new PairSearch(scene, tree, corners, edges, tolerance, settings, question, 0);
        }

        /** Looks for light on a point and for a line from the receiver to it. */
        private void tryPoint(Face face, Vector3D point) {
            if (both.isPresent()) {
                return;
            }
            Optional<WitnessRay> lit = from(lighting, lightQuestion, face, point);
            if (lit.isPresent()) {
                both = from(sight, sightQuestion, face, point).map(seen -> new Both(lit.get(), seen));
            }
        }

        /** A line from points over the disc, among them those nearest to and farthest from the point. */
        private Optional<WitnessRay> from(Scene scene, Question question, Face face, Vector3D point) {
            Pupil pupil = scene.covering().pupil();
            double radius = ((Ring) pupil.outline()).radius();
            double toward =
                    StrictMath.atan2(pupil.frame().inV(point), pupil.frame().inU(point));
            for (double share : SHARES) {
                for (int i = 0; i < (share == 0 ? 1 : DIRECTIONS); i++) {
                    double direction = toward + 2 * Math.PI * i / DIRECTIONS;
                    double[] start = {
                        share * radius * StrictMath.cos(direction), share * radius * StrictMath.sin(direction)
                    };
                    Optional<WitnessRay> found = question.counterexample(start, face, point);
                    if (found.isPresent()) {
                        return found;
                    }
                }
            }
            return Optional.empty();
        }
    }
}
