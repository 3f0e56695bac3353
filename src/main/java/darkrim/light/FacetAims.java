package darkrim.light;

import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Where the light of a star must come together, in a plane parallel to the focal plane, so that it is aimed at a piece of a facet.
 *
 * <p>Immutable; safe for use by many threads.
 */
public final class FacetAims {
    /** Points of the pupil, along each of its two coordinates, from which it is looked whether a piece of a facet is seen. */
    private static final int LOOKS = 8;
    /** Through so many points of the pupil that see it, at most, a star is aimed at a piece. */
    private static final int AIMS = 4;
    /** Through so many points of the pupil a star is aimed at a piece that none of them sees. */
    private static final int AIMS_AT_HIDDEN = 2;
    /** A ray that comes so near to a point, as a share of the way, has come to it. */
    private static final double ARRIVED = 1 - 1e-9;

    private final Scene scene;
    private final FacetTree tree;
    private final double plane;
    private final Envelope wanted;
    private final List<Vector3D> around;
    private final double pupilHeight;
    private final double pupilWidth;
    private final List<Vector3D> looks;

    /**
     * A focus at which a star is aimed at a piece of a side.
     *
     * @param focus the focus, mm
     * @param rank 0 for the first point of the pupil through which a star is aimed at this piece, and so on
     * @param seen whether the piece is seen from that point
     * @param band width of the band of foci from which the middle of the piece is struck, mm; for a level pupil
     */
    public record Aim(Vector2D focus, int rank, boolean seen, double band) {}

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param focusHeight height of the plane of the foci, mm
     * @param foci a rectangle of foci; pieces that are struck from none of them are left out
     */
    public FacetAims(Scene scene, FacetTree tree, double focusHeight, Envelope foci) {
        this.scene = scene;
        this.tree = tree;
        plane = focusHeight;
        wanted = foci;
        around = StarReach.around(scene.beam().pupil());
        pupilHeight = around.get(0).getZ();
        pupilWidth = width(around);
        looks = looks(scene.beam().pupil());
    }

    /** Least width of the bands of foci from which points of a side are struck, mm; for a level pupil. */
    public double narrowest(StarReach.Side side) {
        return narrowest(whole(side));
    }

    private double narrowest(FacetPiece piece) {
        if (piece.lowest() <= plane && plane <= piece.highest()) {
            return 0;
        }
        return Math.min(band(piece.a()), Math.min(band(piece.b()), band(piece.c())));
    }

    /** From a point of height z a pupil of width w and height H looks like w |z - plane| / (H - z) in the plane. */
    private double band(Vector3D e) {
        double z = e.getZ();
        return pupilWidth * Math.abs(z - plane) / Math.max(pupilHeight - z, Double.MIN_NORMAL);
    }

    private FacetPiece whole(StarReach.Side side) {
        int facet = side.facet();
        return new FacetPiece(scene.corner(facet, 0), scene.corner(facet, 1), scene.corner(facet, 2));
    }

    /**
     * Foci at which a star is aimed at each piece of a side, through up to four points of the pupil that see its middle: of 64, sorted by how steeply they look
     * at the side, the steepest, the middle one, those at the quarters and so on, as far as parts do not hide the piece from them. A piece that none of them
     * sees is aimed at through two.
     *
     * @param size no piece is longer, mm
     * @param step what is seen of a piece through one point of the pupil is aimed at piece by piece so that foci follow each other by no more than this, mm
     * @param widest pieces of which all bands are as wide as this or wider are left out, mm
     * @return at least one for each piece that a wanted focus may strike, unless the pupil hides behind the plane of the side or reaches down to it
     */
    public List<Aim> of(StarReach.Side side, double size, double step, double widest) {
        FacetPiece whole = whole(side);
        List<Vector3D> inFront = spread(looks.stream()
                .filter(p -> p.subtract(whole.a()).dot(side.normal()) > 0)
                .sorted((one, two) -> Double.compare(two.dot(side.normal()), one.dot(side.normal())))
                .toList());
        List<Aim> found = new ArrayList<>();
        Ray ray = new Ray();
        Predicate<FacetPiece> narrow = piece -> narrowest(piece) < widest && isWanted(piece);
        for (FacetPiece piece : whole.pieces(size, UnaryOperator.identity(), narrow)) {
            Vector3D middle = piece.middle();
            List<Vector3D> usable = inFront.stream()
                    .filter(p -> piece.highest() < p.getZ() && plane < p.getZ())
                    .toList();
            List<Vector3D> seeing = usable.stream()
                    .filter(p -> sees(p, middle, side.facet(), ray))
                    .limit(AIMS)
                    .toList();
            boolean seen = !seeing.isEmpty();
            List<Vector3D> through = seen ? seeing : usable.subList(0, Math.min(AIMS_AT_HIDDEN, usable.size()));
            for (int rank = 0; rank < through.size(); rank++) {
                Vector3D p = through.get(rank);
                for (FacetPiece part : piece.pieces(step, e -> level(StarReach.focus(p, e, plane)), narrow)) {
                    found.add(new Aim(StarReach.focus(p, part.middle(), plane), rank, seen, band(part.middle())));
                }
            }
        }
        return found;
    }

    /** Whether a focus that is wanted may strike a piece: all that do lie between those of its corners. */
    private boolean isWanted(FacetPiece piece) {
        Envelope foci = new Envelope();
        for (Vector3D p : around) {
            if (!(piece.highest() < p.getZ() && plane < p.getZ())) {
                return true;
            }
            for (Vector3D e : List.of(piece.a(), piece.b(), piece.c())) {
                Vector2D at = StarReach.focus(p, e, plane);
                foci.expandToInclude(at.getX(), at.getY());
            }
        }
        return foci.intersects(wanted);
    }

    /** Whether nothing lies between a point of the pupil and one of a facet. */
    private boolean sees(Vector3D p, Vector3D e, int facet, Ray ray) {
        Vector3D way = e.subtract(p);
        ray.set(p.getX(), p.getY(), p.getZ(), way.getX(), way.getY(), way.getZ(), ARRIVED, Ray.NO_PLANE);
        int met = tree.nearest(ray);
        return met < 0 || met == facet;
    }

    private Vector3D level(Vector2D focus) {
        return Vector3D.of(focus.getX(), focus.getY(), plane);
    }

    /** A list in another order: its first, then what halves the rest, then what halves those parts, and so on. */
    private static <T> List<T> spread(List<T> sorted) {
        int bits = Integer.SIZE - Integer.numberOfLeadingZeros(Math.max(1, sorted.size() - 1));
        return IntStream.range(0, 1 << bits)
                .map(i -> Integer.reverse(i) >>> (Integer.SIZE - bits))
                .filter(i -> i < sorted.size())
                .mapToObj(sorted::get)
                .toList();
    }

    /** Least width of a convex polygon, seen from above, mm. */
    private static double width(List<Vector3D> polygon) {
        Coordinate[] corners =
                polygon.stream().map(p -> new Coordinate(p.getX(), p.getY())).toArray(Coordinate[]::new);
        return new MinimumDiameter(new GeometryFactory().createMultiPointFromCoords(corners)).getLength();
    }

    /** Points spread over the pupil. */
    private static List<Vector3D> looks(Pupil pupil) {
        List<Vector3D> looks = new ArrayList<>();
        double[] at = new double[2];
        for (int i = 0; i < LOOKS; i++) {
            for (int j = 0; j < LOOKS; j++) {
                pupil.outline().place((i + 0.5) / LOOKS, (j + 0.5) / LOOKS, at);
                looks.add(pupil.frame().at(at[0], at[1]));
            }
        }
        return looks;
    }
}
