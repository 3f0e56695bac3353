package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Pieces of facets, what can go from one to another, and what a sample that is drawn by a link counts for. */
class LinksOfPiecesTest {
    private static final double LIFT = 1e-12;
    private static final Vector3D[] LOW = {at(1, 2, 0), at(9, -1, 2), at(4, 7, 1)};
    private static final Vector3D[] HIGH = {at(2, 1, 30), at(5, 8, 33), at(10, 3, 28)};
    private static final Scene SCENE = scene();

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    private static Scene scene() {
        return new SceneBuilder()
                .sheet("low", Finish.ABSORBER, "low/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("high", Finish.ABSORBER, "high/back", Finish.ABSORBER, Place.IN_CODE)
                .triangle("low", LOW[0], LOW[1], LOW[2])
                .triangle("high", HIGH[0], HIGH[1], HIGH[2])
                .build(Beam.of(new Pupil(Ring.disc(5), Frame.about(at(0, 0, 90), at(0, 0, -1)))));
    }

    private static int facet(String name) {
        return SCENE.surface(name).orElseThrow().firstFacet();
    }

    private static Vector3D corner(TrianglePieces pieces, int piece, int k) {
        return at(pieces.corner(piece, k, 0), pieces.corner(piece, k, 1), pieces.corner(piece, k, 2));
    }

    private static double area(TrianglePieces pieces, int piece) {
        return corner(pieces, piece, 1)
                        .subtract(corner(pieces, piece, 0))
                        .cross(corner(pieces, piece, 2).subtract(corner(pieces, piece, 0)))
                        .norm()
                / 2;
    }

    private static void requireConsistent(TrianglePieces pieces, int piece) {
        int facet = pieces.facet(piece);
        assertThat(pieces.area(piece)).isCloseTo(area(pieces, piece), within(1e-12));
        double longest = 0;
        for (int k = 0; k < 3; k++) {
            double a = pieces.weight(piece, k, 0);
            double b = pieces.weight(piece, k, 1);
            Vector3D byWeights = SCENE.corner(facet, 0)
                    .multiply(a)
                    .add(SCENE.corner(facet, 1).multiply(b))
                    .add(SCENE.corner(facet, 2).multiply(1 - a - b));
            assertThat(corner(pieces, piece, k).distance(byWeights)).isLessThan(1e-12);
            longest = Math.max(longest, corner(pieces, piece, k).distance(corner(pieces, piece, (k + 1) % 3)));
        }
        assertThat(pieces.extent(piece)).isCloseTo(longest * longest, within(1e-9));
    }

    /** Halves of halves: the areas add up, corners and weights say the same, and the longest edge is the one that is cut. */
    @Test
    void halvesCoverWhatTheyAreHalvesOf() {
        TrianglePieces pieces = new TrianglePieces();
        int whole = pieces.add(SCENE, facet("low"));
        List<Integer> level = List.of(whole);
        for (int depth = 0; depth < 7; depth++) {
            List<Integer> next = new java.util.ArrayList<>();
            for (int piece : level) {
                requireConsistent(pieces, piece);
                int first = pieces.halves(piece);
                assertThat(pieces.halves(piece)).isEqualTo(first);
                assertThat(pieces.extent(first)).isLessThan(pieces.extent(piece) * (1 + 1e-12));
                next.add(first);
                next.add(first + 1);
            }
            level = next;
            assertThat(level.stream().mapToDouble(piece -> area(pieces, piece)).sum())
                    .isCloseTo(pieces.area(whole), within(1e-9));
        }
        // Seven cuts of the longest edge leave pieces of about the same size.
        double most = level.stream().mapToDouble(pieces::extent).max().orElseThrow();
        assertThat(most).isLessThan(pieces.extent(whole) / 32);
        Vector3D centre = Vector3D.ZERO;
        for (int piece : level) {
            for (int k = 0; k < 3; k++) {
                centre = centre.add(corner(pieces, piece, k).multiply(1.0 / 3 / level.size()));
            }
        }
        assertThat(centre.distance(LOW[0].add(LOW[1]).add(LOW[2]).multiply(1.0 / 3)))
                .isLessThan(1e-9);
        int point = pieces.add(3, 4, 5);
        assertThat(pieces.facet(point)).isEqualTo(-1);
        assertThat(pieces.area(point)).isEqualTo(1);
        assertThat(pieces.extent(point)).isZero();
        assertThat(corner(pieces, point, 2)).isEqualTo(at(3, 4, 5));
    }

    private static Vector3D inside(UniformRandomProvider random, Vector3D... corners) {
        double root = Math.sqrt(random.nextDouble());
        double t = random.nextDouble();
        return corners[0]
                .multiply(1 - root)
                .add(corners[1].multiply(root * t))
                .add(corners[2].multiply(root * (1 - t)));
    }

    private static double between(LinkBound bound, int to, Vector3D facing, int from, Vector3D sending) {
        return bound.between(
                to, facing.getX(), facing.getY(), facing.getZ(), from, sending.getX(), sending.getY(), sending.getZ());
    }

    /** No pair of points has a larger cos a cos b / (pi d^2); and of pieces that are small beside their distance the bound is not much larger. */
    @Test
    void theBoundOfALinkHoldsForAllPointsAndIsNearWhereThePiecesAreSmall() {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(3);
        Vector3D facing = SCENE.normal(facet("low"));
        Vector3D sending = SCENE.normal(facet("high"));
        double previous = Double.POSITIVE_INFINITY;
        for (int depth : new int[] {0, 2, 5, 9}) {
            TrianglePieces pieces = new TrianglePieces();
            LinkBound bound = new LinkBound(pieces, LIFT);
            int to = pieces.add(SCENE, facet("low"));
            int from = pieces.add(SCENE, facet("high"));
            for (int i = 0; i < depth; i++) {
                to = pieces.halves(to) + i % 2;
                from = pieces.halves(from) + (i + 1) % 2;
            }
            double greatest = 0;
            for (int i = 0; i < 500; i++) {
                Vector3D p = inside(random, corner(pieces, to, 0), corner(pieces, to, 1), corner(pieces, to, 2));
                Vector3D q = inside(random, corner(pieces, from, 0), corner(pieces, from, 1), corner(pieces, from, 2));
                Vector3D way = q.subtract(p);
                double cosines = way.normalize().dot(facing) * -way.normalize().dot(sending);
                greatest = Math.max(greatest, cosines / (Math.PI * way.normSq()));
            }
            double said = between(bound, to, facing, from, sending);
            assertThat(said).isGreaterThan(greatest);
            assertThat(said / greatest).isLessThan(1 + 0.8 * Math.pow(0.7, depth));
            assertThat(said / greatest - 1).isLessThan(previous);
            previous = said / greatest - 1;
            // The other way round it is the same; of what turns away there is none.
            assertThat(between(bound, from, sending, to, facing)).isCloseTo(said, within(1e-12 * said));
            assertThat(between(bound, to, facing.negate(), from, sending)).isZero();
            assertThat(between(bound, to, facing, from, sending.negate())).isZero();
            assertThat(between(bound, to, facing, to, facing)).isZero();
        }
    }

    @Test
    void ofPiecesThatNearlyTouchNoBoundIsStated() {
        TrianglePieces pieces = new TrianglePieces();
        LinkBound bound = new LinkBound(pieces, LIFT);
        int one = pieces.add(0, 0, 0);
        int near = pieces.add(0, 0, 1e-7);
        int far = pieces.add(0, 0, 1e-5);
        Vector3D up = Vector3D.Unit.PLUS_Z;
        assertThat(between(bound, one, up, near, up.negate())).isInfinite();
        assertThat(between(bound, one, up, far, up.negate())).isCloseTo(1 / (Math.PI * 1e-10), within(1e5));
    }

    /** Three links by which 1, 3 and 4 can come, of which 2, 0 and 6 is likely: 3/4 of the draws by the first, 1/4 by the other. */
    @Test
    void aLinkIsDrawnByWhatCanComeAndByWhatIsLikelyAndASampleCountsForOneOverThat() {
        TrianglePieces pieces = new TrianglePieces();
        int to = pieces.add(SCENE, facet("low"));
        int from = pieces.add(SCENE, facet("high"));
        int half = pieces.halves(from);
        LightLinks links = new LightLinks(
                pieces,
                List.of(
                        new LightLinks.Link(to, from, 2, 1, 2, 5, false),
                        new LightLinks.Link(to, half, 2, 3, 0, 7, true),
                        new LightLinks.Link(to, half + 1, 4, 4, 6, 11, false)));
        double[] chances = {0.75 / 8 + 0.25 * 2 / 8, 0.75 * 3 / 8, 0.75 * 4 / 8 + 0.25 * 6 / 8};
        double[] factors = {5, 7, 11};
        double upTo = 0;
        for (int i = 0; i < 3; i++) {
            assertThat(links.factor(i)).isCloseTo(factors[i] / chances[i], within(1e-12));
            assertThat(links.at(upTo + 1e-9)).isEqualTo(i);
            upTo += chances[i];
            assertThat(links.at(upTo - 1e-9)).isEqualTo(i);
        }
        assertThat(links.at(1)).isEqualTo(2);
        assertThat(links.at(0)).isZero();
        assertThat(links.count()).isEqualTo(3);
        assertThat(links.largest()).isCloseTo(8 / 0.75, within(1e-7)).isGreaterThan(8 / 0.75);
        assertThat(links.isWide(1)).isTrue();
        assertThat(links.isWide(2)).isFalse();
        assertThat(links.surface(2)).isEqualTo(4);
        assertThat(links.to(2)).isEqualTo(to);
        assertThat(links.from(1)).isEqualTo(half);
        LightLinks unlikely = new LightLinks(
                pieces,
                List.of(
                        new LightLinks.Link(to, from, 2, 1, 0, 5, false),
                        new LightLinks.Link(to, half, 2, 3, 0, 7, false)));
        assertThat(unlikely.factor(1)).isCloseTo(7 / 0.75, within(1e-12));
        assertThat(unlikely.largest()).isCloseTo(4, within(1e-7));
        assertThat(new LightLinks(pieces, List.of()).largest()).isZero();
    }

    @Test
    void pointsOfALinkLieInItsPiecesAndOnlyThose() {
        TrianglePieces pieces = new TrianglePieces();
        int from = pieces.add(SCENE, facet("high"));
        int to = pieces.add(SCENE, facet("low"));
        int piece = pieces.halves(pieces.halves(from) + 1);
        int sink = pieces.halves(pieces.halves(to)) + 1;
        for (int quarter : new int[] {piece + 1, pieces.halves(pieces.halves(from)), pieces.halves(piece)}) {
            LightLinks other = new LightLinks(pieces, List.of(new LightLinks.Link(sink, quarter, 2, 1, 0, 5, false)));
            UniformRandomProvider some = RandomSource.XO_SHI_RO_256_PP.create(2);
            for (int i = 0; i < 500; i++) {
                double root = Math.sqrt(some.nextDouble());
                double a = 1 - root;
                double b = root * some.nextDouble();
                Vector3D point = HIGH[0].multiply(a).add(HIGH[1].multiply(b)).add(HIGH[2].multiply(1 - a - b));
                assertThat(other.isFrom(0, a, b)).isEqualTo(holds(pieces, quarter, point));
            }
        }
        LightLinks links = new LightLinks(pieces, List.of(new LightLinks.Link(sink, piece, 2, 1, 0, 5, false)));
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(8);
        double[] placed = new double[3];
        Vector3D sum = Vector3D.ZERO;
        int count = 2000;
        int within = 0;
        for (int i = 0; i < count; i++) {
            links.placeFrom(0, random.nextDouble(), random.nextDouble(), placed);
            sum = sum.add(at(placed[0], placed[1], placed[2]).multiply(1.0 / count));
            // Weights of a point of the whole facet: a quarter of it is the piece.
            double root = Math.sqrt(random.nextDouble());
            double a = 1 - root;
            double b = root * random.nextDouble();
            Vector3D point = HIGH[0].multiply(a).add(HIGH[1].multiply(b)).add(HIGH[2].multiply(1 - a - b));
            assertThat(links.isFrom(0, a, b)).isEqualTo(holds(pieces, piece, point));
            within += links.isFrom(0, a, b) ? 1 : 0;
        }
        Vector3D middle = corner(pieces, piece, 0)
                .add(corner(pieces, piece, 1))
                .add(corner(pieces, piece, 2))
                .multiply(1.0 / 3);
        // Five standard deviations of points that lie within 3 mm of the middle.
        assertThat(sum.distance(middle)).isLessThan(5 * 3 / Math.sqrt(count));
        assertThat(within / (double) count).isCloseTo(0.25, within(5 * Math.sqrt(0.1875 / count)));
        double[] weights = {0.2, 0.5};
        Vector3D expected = corner(pieces, sink, 0)
                .multiply(0.2)
                .add(corner(pieces, sink, 1).multiply(0.5))
                .add(corner(pieces, sink, 2).multiply(0.3));
        double a = links.weightTo(0, weights[0], weights[1], 0);
        double b = links.weightTo(0, weights[0], weights[1], 1);
        assertThat(LOW[0].multiply(a)
                        .add(LOW[1].multiply(b))
                        .add(LOW[2].multiply(1 - a - b))
                        .distance(expected))
                .isLessThan(1e-12);
    }

    private static boolean holds(TrianglePieces pieces, int piece, Vector3D point) {
        double parts = 0;
        for (int k = 0; k < 3; k++) {
            Vector3D one = corner(pieces, piece, k).subtract(point);
            Vector3D two = corner(pieces, piece, (k + 1) % 3).subtract(point);
            parts += one.cross(two).norm() / 2;
        }
        return parts < pieces.area(piece) * (1 + 1e-9);
    }
}
