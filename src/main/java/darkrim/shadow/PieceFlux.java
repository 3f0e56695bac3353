package darkrim.shadow;

import darkrim.geom.Outline;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Upper bounds of the light that a piece of a surface gets from the pupil and sends to a receiver, as if nothing stood in between.
 *
 * <p>Largest direct irradiance: E = integral of cos(theta) cos(theta_p) / d^2 over the pupil, each factor at its largest, and never more than
 * pi times the radiance. Largest view factor: the least of the same bound for the kernel cos cos / (pi d^2) over small pieces, of the share
 * (1 - cos(phi)) / 2 of the cosine-weighted hemisphere that points toward the receiver's plane, phi the angle between the normals, and of 1.
 */
final class PieceFlux {
    /** A piece of the receiver is cut while it is larger than this share of its distance. */
    private static final double FINE = 0.5;
    /** How often a facet of the receiver is cut at the most. */
    private static final int RECEIVER_CUTS = 6;
    /** Covers the rounding of the sums. */
    private static final double ROUNDED_UP = 1 + 1e-9;

    private final Pupil pupil;
    private final double reference;
    private final List<SpaceTriangle> target;
    private final boolean flat;

    /**
     * @param target the facets of the receiver
     */
    PieceFlux(Scene scene, List<SpaceTriangle> target) {
        this.pupil = scene.covering().pupil();
        this.reference = scene.referenceIrradiance();
        this.target = target;
        flat = target.stream()
                .allMatch(facet -> facet.normal().dot(target.get(0).normal()) > 1 - 1e-12);
    }

    /** The largest direct irradiance of any point of a piece, relative; nothing in between is counted. */
    double largestIrradiance(SpaceTriangle piece) {
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
        return all / reference;
    }

    /** The largest share of what any point of a piece scatters that goes straight to the receiver. */
    double largestViewFactor(SpaceTriangle piece) {
        double kernel = 0;
        double turned = 0;
        for (SpaceTriangle facet : target) {
            kernel += kernel(piece, facet, RECEIVER_CUTS);
            turned = Math.max(turned, (1 - piece.normal().dot(facet.normal())) / 2);
        }
        // The half space below one plane holds a receiver that is flat.
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

    /** Whether some point of a piece faces some point of the receiver, and the other way round. */
    boolean canReach(SpaceTriangle sender) {
        return target.stream()
                .anyMatch(facet -> sender.greatestHeightOf(facet) > 0 && facet.greatestHeightOf(sender) > 0);
    }
}
