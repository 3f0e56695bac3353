package darkrim.study.irradiance;

import darkrim.light.Reflector;
import darkrim.reflection.Reflection;
import darkrim.sampling.Streams;
import darkrim.scene.FieldLimit;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Looks for a ray that carries light to a surface, for drawing: straight from the pupil, or by the surface and the part of its finish that
 * reflects most of what arrives. Every leg is tested against all parts. For use by one thread.
 */
public final class ExampleRay {
    /** Rays that are tried. */
    private static final int TRIES = 300_000;
    /** Of so many that carry light the one that carries most is taken: one that hardly does would mislead. */
    private static final int FOUND = 40;

    private final CheckedLight checked;
    private final Scene scene;
    private final FacetTree tree;
    private final StartPoints starts;
    private final Ray ray = new Ray();
    private final double[] into = new double[3];

    /**
     * @param checked what a check found
     */
    public ExampleRay(CheckedLight checked) {
        this.checked = checked;
        scene = checked.scene();
        double[] corners = scene.copyCorners();
        tree = FacetTree.build(corners, scene.copyPlanes(), scene.bound());
        starts = new StartPoints(corners, tree);
    }

    /** A ray straight from the pupil: its two ends, mm. Empty where none is known. */
    public Optional<List<Vector3D>> direct(Surface receiver) {
        return Optional.of(checked.surfaces().get(receiver.index()).ray()).filter(ends -> !ends.isEmpty());
    }

    /** A ray by the strongest way of once-reflected light: on the pupil, where it is reflected, where it arrives, mm. */
    public Optional<List<Vector3D>> reflected(Surface receiver) {
        return checked.surfaces()
                .get(receiver.index())
                .strongest()
                .flatMap(by -> search(receiver, scene.surfaces().get(by.surface()), by.part()));
    }

    private Optional<List<Vector3D>> search(Surface receiver, Surface via, Reflector.Part part) {
        boolean mirror = part == Reflector.Part.MIRROR;
        UniformRandomProvider random = new Streams(checked.seed()).stream(receiver.name() + " by " + via.name(), 0);
        Spot arrival = new Spot(receiver);
        Spot reflection = new Spot(via);
        Vector3D[] best = null;
        double most = 0;
        int found = 0;
        for (int i = 0; i < TRIES && found < FOUND; i++) {
            arrival.draw(random);
            Vector3D onPupil = onPupil(random);
            reflection.draw(random);
            boolean there = !mirror || reflection.image(arrival, onPupil);
            double carried = there ? carried(arrival, reflection, onPupil, part) : 0;
            if (carried > 0) {
                found++;
                if (carried > most) {
                    most = carried;
                    best = new Vector3D[] {onPupil, reflection.point, arrival.point};
                }
            }
        }
        return Optional.ofNullable(best).map(List::of);
    }

    private Vector3D onPupil(UniformRandomProvider random) {
        Pupil pupil = scene.beam().pupil();
        double[] place = new double[2];
        pupil.outline().place(random.nextDouble(), random.nextDouble(), place);
        return pupil.frame().at(place[0], place[1]);
    }

    /** How much light a ray carries, but for a factor that is the same for all; 0 where it is blocked or leaves to the back of a face. */
    private double carried(Spot arrival, Spot reflection, Vector3D onPupil, Reflector.Part part) {
        Vector3D out = onPupil.subtract(reflection.point);
        Vector3D in = reflection.point.subtract(arrival.point);
        double atPupil = -scene.beam().pupil().frame().normal().dot(out);
        double lit = out.dot(reflection.normal);
        double sent = -in.dot(reflection.normal);
        double got = in.dot(arrival.normal);
        if (!(atPupil > 0 && lit > 0 && sent > 0 && got > 0)) {
            return 0;
        }
        Optional<FieldLimit> limit = scene.beam().fieldLimit();
        Vector3D p = reflection.point;
        boolean passes =
                limit.isEmpty() || limit.get().passes(p.getX(), p.getY(), p.getZ(), out.getX(), out.getY(), out.getZ());
        if (!passes || isBlocked(reflection, out, 1) || isBlocked(arrival, in, 1 - 1e-9)) {
            return 0;
        }
        double leg = in.normSq();
        double way = out.norm();
        double cosineIn = Math.min(1, lit / way);
        double cosineOut = Math.min(1, sent / Math.sqrt(leg));
        Reflection law = reflection.surface.finish().reflection();
        double share = lit * sent * got / (leg * leg);
        return switch (part) {
            case MIRROR -> law.mirror(cosineIn) * got / Math.sqrt(leg);
            case DIFFUSE -> law.broad(cosineIn, cosineOut) * share;
            case LOBE -> law.lobe(cosineIn, cosineOut, -in.dot(out) / (Math.sqrt(leg) * way)) * share;
        };
    }

    private boolean isBlocked(Spot from, Vector3D way, double length) {
        ray.set(
                from.point.getX(),
                from.point.getY(),
                from.point.getZ(),
                way.getX(),
                way.getY(),
                way.getZ(),
                length,
                scene.plane(from.facet));
        return tree.blocked(ray);
    }

    /** A place of a surface, lifted off it. */
    private final class Spot {
        private final Surface surface;
        private int facet;
        private Vector3D point = Vector3D.ZERO;
        private Vector3D normal = Vector3D.ZERO;

        Spot(Surface surface) {
            this.surface = surface;
        }

        void draw(UniformRandomProvider random) {
            double left = random.nextDouble() * surface.area();
            facet = surface.firstFacet();
            while (facet < surface.firstFacet() + surface.facetCount() - 1 && left > scene.facetArea(facet)) {
                left -= scene.facetArea(facet);
                facet++;
            }
            double root = Math.sqrt(random.nextDouble());
            place(1 - root, root * random.nextDouble());
        }

        /**
         * Goes to where the plane of the facet that was drawn shows the pupil to another place as a mirror; false where it does not. Each facet of
         * a curved mirror has an image of its own.
         */
        boolean image(Spot from, Vector3D onPupil) {
            int plane = scene.plane(facet);
            Vector3D across = scene.normal(facet);
            double behind = across.dot(onPupil.subtract(scene.corner(facet, 0)));
            Vector3D way = onPupil.subtract(across.multiply(2 * behind)).subtract(from.point);
            ray.set(
                    from.point.getX(),
                    from.point.getY(),
                    from.point.getZ(),
                    way.getX(),
                    way.getY(),
                    way.getZ(),
                    1,
                    scene.plane(from.facet));
            facet = tree.nearest(ray);
            if (facet < 0
                    || scene.plane(facet) != plane
                    || scene.surfaceMet(facet, way.getX(), way.getY(), way.getZ()) != surface.index()) {
                return false;
            }
            place(ray.weightA(), ray.weightB());
            return true;
        }

        private void place(double a, double b) {
            starts.place(facet, a, b, !surface.back(), into);
            point = Vector3D.of(into);
            normal = surface.back() ? scene.normal(facet).negate() : scene.normal(facet);
        }
    }
}
