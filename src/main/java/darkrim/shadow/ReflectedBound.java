package darkrim.shadow;

import darkrim.reflection.Reflection;
import darkrim.scene.Incidence;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * An upper bound of the once-reflected light on a surface, without a sample: for every piece of a surface that may be lit and faces the
 * receiver, its area times its largest direct irradiance is the flux that it gets; of what scatters at most pi times the largest BRDF times the
 * largest view factor from the piece to the receiver arrives, and never more than the largest reflectance; of the mirror part at most its largest
 * reflectance at the angles at which the pupil can strike the piece ({@link PieceFlux}, {@link Incidence}). The sum over the
 * receiver's area bounds its mean. The brightest reflection in all directions at once bounds it too: pi f E from what scatters, or by reciprocity
 * its largest reflectance times pi L; R pi L from a mirror.
 *
 * <p>Pieces that are proved dark, or proved unseen from the receiver ({@link NoReflection}), send nothing. If all do, the bound is 0: a proof
 * that no once-reflected light arrives at all. What else stands in between is left out, which only makes the bound larger.
 *
 * <p>Immutable; safe for use by many threads.
 */
public final class ReflectedBound {
    /** How often the piece that counts most is cut in two. */
    private static final int CUTS = 500;
    /** Most pieces for each receiver that a proof is tried for. */
    private static final int PROOFS = 200;
    /** After so many pieces in a row for which a proof was tried in vain, none is tried any more. */
    private static final int PATIENCE = 50;
    /** Of a surface of more facets only single pieces are proved unseen. */
    private static final int MOST_FACETS_TO_PROVE_WHOLE = 300;
    /** With more pairs of facets of senders and receiver no bound is sought. */
    private static final long MOST_PAIRS = 20_000_000;
    /** Covers the rounding of the sums. */
    private static final double ROUNDED_UP = 1 + 1e-9;

    private final Scene scene;
    private final FacetTree tree;
    private final Set<Surface> dark;
    private final BooleanSupplier stop;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param dark surfaces that are proved dark: they send nothing
     */
    public ReflectedBound(Scene scene, FacetTree tree, Set<Surface> dark) {
        this(scene, tree, dark, () -> false);
    }

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param dark surfaces that are proved dark: they send nothing
     * @param stop whether to give up, asked often and from any thread: the bound is then what is known so far, infinite if nothing is
     */
    public ReflectedBound(Scene scene, FacetTree tree, Set<Surface> dark, BooleanSupplier stop) {
        this.stop = stop;
        this.scene = scene;
        this.tree = tree;
        this.dark = Set.copyOf(dark);
    }

    /** No mean once-reflected irradiance of a surface is larger than this, relative to the reference; 0 where none can arrive at all. */
    public double of(Surface receiver) {
        return of(receiver, 0);
    }

    /**
     * The same, with no more work than it takes to come down to a limit.
     *
     * @param receiver the surface
     * @param limit relative irradiance
     * @return the bound; infinite where so many facets face so many others that none was sought
     */
    public double of(Surface receiver, double limit) {
        if ((long) sendingFacets() * receiver.facetCount() > MOST_PAIRS) {
            return Double.POSITIVE_INFINITY;
        }
        PieceFlux flux = new PieceFlux(scene, triangles(receiver));
        Optional<PriorityQueue<Piece>> pieces = pieces(flux);
        if (pieces.isEmpty()) {
            return Double.POSITIVE_INFINITY;
        }
        double plain = bound(cut(pieces.get(), flux), receiver);
        if (plain <= limit || stop.getAsBoolean()) {
            return plain;
        }
        NoReflection none = new NoReflection(scene, tree, receiver, stop);
        Optional<PriorityQueue<Piece>> all = pieces(flux);
        if (all.isEmpty()) {
            return plain;
        }
        PriorityQueue<Piece> seen = all.get();
        Set<Surface> unseen = seen.stream()
                .map(Piece::sender)
                .distinct()
                .filter(sender -> sender.facetCount() <= MOST_FACETS_TO_PROVE_WHOLE && none.isUnseen(sender))
                .collect(Collectors.toSet());
        seen.removeIf(piece -> unseen.contains(piece.sender()));
        return Math.min(plain, bound(cutAndProve(seen, flux, none), receiver));
    }

    /**
     * A piece of a surface.
     *
     * @param plane the number of its plane in the scene
     * @param flux the largest flux that it can send to the receiver, mm2 of relative irradiance
     * @param brightest the largest irradiance that such a reflection gives where it fills the sky, relative
     */
    private record Piece(Surface sender, int plane, SpaceTriangle triangle, double flux, double brightest) {}

    private int sendingFacets() {
        return scene.surfaces().stream()
                .filter(this::maySend)
                .mapToInt(Surface::facetCount)
                .sum();
    }

    private boolean maySend(Surface surface) {
        return !dark.contains(surface) && surface.finish().reflects();
    }

    /** The facets of all surfaces that may send light; none if it was stopped, for a sum without some of them is no bound. */
    private Optional<PriorityQueue<Piece>> pieces(PieceFlux flux) {
        PriorityQueue<Piece> pieces = new PriorityQueue<>(Comparator.comparingDouble(piece -> -piece.flux()));
        for (Surface sender : scene.surfaces()) {
            if (maySend(sender)) {
                for (int f = sender.firstFacet(); f < sender.firstFacet() + sender.facetCount(); f++) {
                    if (stop.getAsBoolean()) {
                        return Optional.empty();
                    }
                    add(pieces, piece(sender, scene.plane(f), triangle(sender, f), flux));
                }
            }
        }
        return Optional.of(pieces);
    }

    private static void add(PriorityQueue<Piece> pieces, Piece piece) {
        if (piece.flux() > 0) {
            pieces.add(piece);
        }
    }

    private PriorityQueue<Piece> cut(PriorityQueue<Piece> pieces, PieceFlux flux) {
        for (int i = 0; i < CUTS && !pieces.isEmpty() && !stop.getAsBoolean(); i++) {
            halve(pieces.remove(), pieces, flux);
        }
        return pieces;
    }

    private PriorityQueue<Piece> cutAndProve(PriorityQueue<Piece> pieces, PieceFlux flux, NoReflection none) {
        int vain = 0;
        for (int i = 0; i < CUTS && !pieces.isEmpty() && !stop.getAsBoolean(); i++) {
            Piece most = pieces.remove();
            if (i < PROOFS && vain < PATIENCE && !stop.getAsBoolean() && none.isProved(most.triangle(), most.plane())) {
                vain = 0;
            } else {
                vain++;
                halve(most, pieces, flux);
            }
        }
        return pieces;
    }

    private void halve(Piece piece, PriorityQueue<Piece> pieces, PieceFlux flux) {
        add(pieces, piece(piece.sender(), piece.plane(), piece.triangle().half(0), flux));
        add(pieces, piece(piece.sender(), piece.plane(), piece.triangle().half(1), flux));
    }

    private double bound(PriorityQueue<Piece> pieces, Surface receiver) {
        double sum = pieces.stream().mapToDouble(Piece::flux).sorted().sum() / receiver.area();
        double brightest = pieces.stream().mapToDouble(Piece::brightest).max().orElse(0);
        return Math.min(sum, brightest) * ROUNDED_UP;
    }

    private Piece piece(Surface sender, int plane, SpaceTriangle triangle, PieceFlux flux) {
        double irradiance = flux.canReach(triangle) ? flux.largestIrradiance(triangle) : 0;
        if (!(irradiance > 0)) {
            return new Piece(sender, plane, triangle, 0, 0);
        }
        Reflection reflection = sender.finish().reflection();
        double all = Math.PI / scene.referenceIrradiance();
        double sent = 0;
        double brightest = 0;
        if (reflection.scatters()) {
            double viewFactor = flux.largestViewFactor(triangle);
            double broad = reflection.greatestBroad();
            double lobe = Math.PI * reflection.greatestLobe();
            double mostOfBroad = reflection.greatestBroadReflectance();
            double mostOfLobe = reflection.greatestLobeReflectance();
            sent += Math.min(broad * viewFactor, mostOfBroad) + Math.min(lobe * viewFactor, mostOfLobe);
            brightest +=
                    Math.min(broad * irradiance, mostOfBroad * all) + Math.min(lobe * irradiance, mostOfLobe * all);
        }
        if (reflection.hasMirror()) {
            Incidence incidence =
                    Incidence.of(scene.covering().pupil(), triangle.a(), triangle.b(), triangle.c(), triangle.normal());
            double mirror = reflection.greatestMirror(incidence.least(), incidence.most());
            sent += mirror;
            brightest += mirror * all;
        }
        return new Piece(sender, plane, triangle, triangle.area() * irradiance * sent, brightest);
    }

    private List<SpaceTriangle> triangles(Surface surface) {
        return IntStream.range(surface.firstFacet(), surface.firstFacet() + surface.facetCount())
                .mapToObj(f -> triangle(surface, f))
                .toList();
    }

    private SpaceTriangle triangle(Surface surface, int f) {
        Vector3D normal = surface.back() ? scene.normal(f).negate() : scene.normal(f);
        return new SpaceTriangle(scene.corner(f, 0), scene.corner(f, 1), scene.corner(f, 2), normal);
    }
}
