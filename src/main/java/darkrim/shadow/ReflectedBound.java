package darkrim.shadow;

import darkrim.geom.Outline;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * An upper bound of the once-reflected light on a surface, without a sample: for every piece of a surface that may be lit and faces the
 * receiver, its area times its largest direct irradiance times its reflectance is the flux that it sends out; of the Lambertian part at
 * most the largest view factor from the piece to the receiver arrives, of the mirror part at most all. The sum over the receiver's area
 * bounds its mean. What stands in between is left out, which only makes the bound larger.
 *
 * <p>Largest direct irradiance: E = integral of cos(theta) cos(theta_p) / d^2 over the pupil, each factor at its largest, and never more than
 * pi times the radiance. Largest view factor: the least of the same bound for the kernel cos cos / (pi d^2) over small pieces, of the share
 * (1 - cos(phi)) / 2 of the cosine-weighted hemisphere that points toward the receiver's plane, phi the angle between the normals, and of 1.
 *
 * <p>Immutable; safe for use by many threads.
 */
public final class ReflectedBound {
    /** How often the piece that counts most is cut in two. */
    private static final int CUTS = 1500;
    /** A piece of the receiver is cut while it is larger than this share of its distance. */
    private static final double FINE = 0.5;
    /** How often a facet of the receiver is cut at the most. */
    private static final int RECEIVER_CUTS = 6;
    /** Covers the rounding of the sums. */
    private static final double ROUNDED_UP = 1 + 1e-9;

    private final Scene scene;
    private final Set<Surface> dark;

    /**
     * @param scene the scene
     * @param dark surfaces that are proved dark: they send nothing
     */
    public ReflectedBound(Scene scene, Set<Surface> dark) {
        this.scene = scene;
        this.dark = Set.copyOf(dark);
    }

    /** No mean once-reflected irradiance of a surface is larger than this, relative to the reference; 0 where none can arrive at all. */
    public double of(Surface receiver) {
        List<SpaceTriangle> target = triangles(receiver);
        Comparator<Piece> largestFirst = Comparator.comparingDouble(piece -> -piece.flux());
        PriorityQueue<Piece> pieces = new PriorityQueue<>(largestFirst);
        for (Surface sender : scene.surfaces()) {
            if (!dark.contains(sender) && sender.finish().reflectance() > 0) {
                for (SpaceTriangle facet : triangles(sender)) {
                    pieces.add(piece(sender, facet, target));
                }
            }
        }
        for (int i = 0; i < CUTS && !pieces.isEmpty() && pieces.peek().flux() > 0; i++) {
            Piece most = pieces.remove();
            pieces.add(piece(most.sender(), most.triangle().half(0), target));
            pieces.add(piece(most.sender(), most.triangle().half(1), target));
        }
        double flux = pieces.stream().mapToDouble(Piece::flux).sorted().sum();
        return flux / receiver.area() * ROUNDED_UP;
    }

    /** A piece of a surface and the largest flux that it can send to the receiver, mm2 of relative irradiance. */
    private record Piece(Surface sender, SpaceTriangle triangle, double flux) {}

    private Piece piece(Surface sender, SpaceTriangle triangle, List<SpaceTriangle> target) {
        double irradiance = canReach(triangle, target) ? largestIrradiance(triangle) : 0;
        if (!(irradiance > 0)) {
            return new Piece(sender, triangle, 0);
        }
        double viewFactor = sender.finish().diffuse() > 0 ? largestViewFactor(triangle, target) : 0;
        double sent = sender.finish().diffuse() * viewFactor + sender.finish().mirror();
        return new Piece(sender, triangle, triangle.area() * irradiance * sent);
    }

    private double largestIrradiance(SpaceTriangle piece) {
        Pupil pupil = scene.beam().pupil();
        Outline outline = pupil.outline();
        Vector3D down = pupil.frame().normal();
        Vector3D centre = pupil.frame().origin();
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        double facing = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < 3; i++) {
            Vector3D toCentre = centre.subtract(piece.corner(i));
            double height = -toCentre.dot(down);
            low = Math.min(low, height);
            high = Math.max(high, height);
            facing = Math.max(facing, toCentre.dot(piece.normal()));
        }
        // Going from the centre to the rim changes the height above the facet by the in-plane part of its normal at
        // most.
        double along = piece.normal().dot(down);
        facing += outline.reach() * Math.sqrt(Math.max(0, 1 - along * along)) * ROUNDED_UP;
        if (high <= 0 || facing <= 0) {
            return 0;
        }
        double all = Math.PI;
        if (low > 0) {
            double nearest = Math.max(low, piece.distanceFrom(centre) - outline.reach());
            double cosine = Math.min(1, facing / nearest);
            all = Math.min(
                    all, outline.area() * cosine * Math.min(high / (nearest * nearest * nearest), 1 / (low * low)));
        }
        return all / scene.referenceIrradiance();
    }

    private static double largestViewFactor(SpaceTriangle piece, List<SpaceTriangle> target) {
        double kernel = 0;
        double turned = 0;
        for (SpaceTriangle facet : target) {
            kernel += kernel(piece, facet, RECEIVER_CUTS);
            turned = Math.max(turned, (1 - piece.normal().dot(facet.normal())) / 2);
        }
        // The half space below one plane holds a receiver that is flat.
        boolean flat = target.stream()
                .allMatch(facet -> facet.normal().dot(target.get(0).normal()) > 1 - 1e-12);
        return Math.min(Math.min(1, kernel), flat ? turned * ROUNDED_UP : 1);
    }

    private static double kernel(SpaceTriangle piece, SpaceTriangle facet, int cuts) {
        double distance = piece.distance(facet);
        double sending = piece.greatestHeightOf(facet);
        double receiving = facet.greatestHeightOf(piece);
        if (sending <= 0 || receiving <= 0) {
            return 0;
        }
        if (cuts > 0 && facet.size() > FINE * distance) {
            return kernel(piece, facet.half(0), cuts - 1) + kernel(piece, facet.half(1), cuts - 1);
        }
        if (!(distance > 0)) {
            return 1;
        }
        double cosines = Math.min(1, sending / distance) * Math.min(1, receiving / distance);
        return facet.area() * cosines / (Math.PI * distance * distance);
    }

    private static boolean canReach(SpaceTriangle sender, List<SpaceTriangle> target) {
        return target.stream()
                .anyMatch(facet -> sender.greatestHeightOf(facet) > 0 && facet.greatestHeightOf(sender) > 0);
    }

    private List<SpaceTriangle> triangles(Surface surface) {
        List<SpaceTriangle> all = new ArrayList<>();
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            all.add(new SpaceTriangle(
                    scene.corner(f, 0),
                    scene.corner(f, 1),
                    scene.corner(f, 2),
                    surface.back() ? scene.normal(f).negate() : scene.normal(f)));
        }
        return all;
    }
}
