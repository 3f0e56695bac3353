package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * The once-reflected light of a star as an integral over what the star lights, which shares no estimator with {@link StarLight}.
 *
 * <p>A point x of a surface is lit through one point p of the pupil only, where the line through x and the focus s meets it. A pupil element dA
 * sends dPhi = Phi dA / A into the solid angle dA cos(theta_p) / d_p2 about s, so E(x) = (Phi / A) d_p2 / cos(theta_p) cos(theta_x) / d_x2 with
 * distances from s. x is drawn evenly from a rectangle around the lit spot. What scatters is looked for at two points of the receiver's plane: one spread
 * evenly over the receiver, and one about the place where the mirror direction meets its plane, at a distance whose logarithm is even, so that the
 * peak of a lobe is met at every scale. Both are weighted by their share of both densities (balance heuristic).
 */
final class GatheredStar {
    /** Distances from the mirror direction's place within which points are drawn, mm. */
    private static final double NEAREST = 1e-7;

    private static final double LOGARITHM = Math.log(300 / NEAREST);
    private static final int RIM = 720;

    private final Scene scene;
    private final FacetTree tree;
    private final Vector3D focus;
    private final Ray ray = new Ray();

    GatheredStar(Scene scene, FacetTree tree, Vector3D focus) {
        this.scene = scene;
        this.tree = tree;
        this.focus = focus;
    }

    /** Share of the flux that arrives on a flat surface of two triangles, a parallelogram, after one reflection by a flat surface; from a round pupil. */
    Estimate share(Surface receiver, Surface reflector, UniformRandomProvider random, int samples) {
        Accumulator sum = new Accumulator();
        Vector3D normal = normal(reflector);
        Vector3D u = normal.orthogonal();
        Vector3D v = normal.cross(u);
        Vector3D origin = scene.corner(reflector.firstFacet(), 0);
        Vector3D onReceiver = scene.corner(receiver.firstFacet(), 0);
        Vector3D up = normal(receiver);
        Vector3D along = up.orthogonal();
        double[] box = spot(origin, normal, u, v);
        double area = (box[1] - box[0]) * (box[3] - box[2]);
        for (int i = 0; i < samples; i++) {
            Vector3D x = Vector3D.Sum.of(origin)
                    .addScaled(box[0] + (box[1] - box[0]) * random.nextDouble(), u)
                    .addScaled(box[2] + (box[3] - box[2]) * random.nextDouble(), v)
                    .get();
            Vector3D toSource = toward(x);
            double in = toSource.dot(normal);
            double irradiance = contains(reflector, x)
                    ? facing(x, normal) * in / focus.subtract(x).normSq()
                    : 0;
            // Both are drawn whether x is lit or not, so that every finish gets the same points.
            Vector3D even = evenly(receiver, random);
            double distance = NEAREST * Math.exp(random.nextDouble() * LOGARITHM);
            double turn = 2 * Math.PI * random.nextDouble();
            if (!(irradiance > 0)) {
                sum.add(0);
                continue;
            }
            Reflection reflection = reflector.finish().reflection();
            Vector3D mirrorWay = normal.multiply(2 * in).subtract(toSource);
            double light =
                    reflection.hasMirror() && strikes(x, mirrorWay, receiver, reflector) ? reflection.mirror(in) : 0;
            Vector3D place = x.add(mirrorWay.multiply(onReceiver.subtract(x).dot(up) / mirrorWay.dot(up)));
            Vector3D about = Vector3D.Sum.of(place)
                    .addScaled(distance * Math.cos(turn), along)
                    .addScaled(distance * Math.sin(turn), up.cross(along))
                    .get();
            for (Vector3D y : List.of(even, about)) {
                Vector3D way = y.subtract(x).normalize();
                double out = way.dot(normal);
                double facing = -way.dot(up);
                if (out > 0 && facing > 0 && strikes(x, way, receiver, reflector)) {
                    double away = y.distance(place);
                    double density =
                            1 / receiver.area() + (away < NEAREST ? 0 : 1 / (2 * Math.PI * away * away * LOGARITHM));
                    double brdf = reflection.broad(in, out) / Math.PI + reflection.lobe(in, out, way.dot(toSource));
                    light += brdf * out * facing / y.subtract(x).normSq() / density;
                }
            }
            sum.add(area * irradiance * light);
        }
        return sum.estimate(Double.POSITIVE_INFINITY);
    }

    /** A rectangle around the spot that the star makes in a plane: from and to along u, from and to along v, mm. */
    private double[] spot(Vector3D origin, Vector3D normal, Vector3D u, Vector3D v) {
        Pupil pupil = scene.beam().pupil();
        double[] box = {
            Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY
        };
        for (int i = 0; i < RIM; i++) {
            double turn = 2 * Math.PI * i / RIM;
            double reach = 1.0001 * pupil.outline().reach();
            Vector3D p = pupil.frame().at(reach * Math.cos(turn), reach * Math.sin(turn));
            Vector3D way = focus.subtract(p);
            Vector3D hit = p.add(way.multiply(origin.subtract(p).dot(normal) / way.dot(normal)))
                    .subtract(origin);
            box[0] = Math.min(box[0], hit.dot(u));
            box[1] = Math.max(box[1], hit.dot(u));
            box[2] = Math.min(box[2], hit.dot(v));
            box[3] = Math.max(box[3], hit.dot(v));
        }
        return box;
    }

    private Vector3D evenly(Surface surface, UniformRandomProvider random) {
        int facet = surface.firstFacet() + random.nextInt(surface.facetCount());
        double root = Math.sqrt(random.nextDouble());
        double second = root * (1 - random.nextDouble());
        return Vector3D.Sum.create()
                .addScaled(1 - root, scene.corner(facet, 0))
                .addScaled(second, scene.corner(facet, 1))
                .addScaled(root - second, scene.corner(facet, 2))
                .get();
    }

    /** Whether a point of its plane belongs to a surface. */
    private boolean contains(Surface surface, Vector3D x) {
        Vector3D normal = normal(surface);
        Vector3D from = x.add(normal);
        return met(from, normal.negate(), surface)
                .filter(hit -> hit.distance(x) < 1e-6)
                .isPresent();
    }

    private boolean strikes(Vector3D x, Vector3D way, Surface receiver, Surface reflector) {
        return met(x.add(normal(reflector).multiply(1e-9)), way, receiver).isPresent();
    }

    /** d_p2 / (A cos(theta_p)), 0 where x is not lit. */
    private double facing(Vector3D x, Vector3D normal) {
        Pupil pupil = scene.beam().pupil();
        Vector3D toSource = toward(x);
        double cosine = -toSource.dot(pupil.frame().normal());
        if (!(toSource.dot(normal) > 0 && cosine > 0)) {
            return 0;
        }
        double away = pupil.frame().height(x) / cosine;
        Vector3D p = x.add(toSource.multiply(away));
        if (!pupil.outline().contains(pupil.frame().inU(p), pupil.frame().inV(p))) {
            return 0;
        }
        Vector3D from = x.add(normal.multiply(1e-9));
        ray.set(from, toSource, away, Ray.NO_PLANE);
        return tree.blocked(ray)
                ? 0
                : focus.subtract(p).normSq() / (cosine * pupil.outline().area());
    }

    /** Unit vector from a point to where its light comes from. */
    private Vector3D toward(Vector3D x) {
        Vector3D line = x.subtract(focus).normalize();
        return line.dot(scene.beam().pupil().frame().normal()) < 0 ? line : line.negate();
    }

    private Optional<Vector3D> met(Vector3D y, Vector3D way, Surface wanted) {
        ray.set(y, way, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
        int facet = tree.nearest(ray);
        return facet >= 0 && scene.surfaceMet(facet, way.getX(), way.getY(), way.getZ()) == wanted.index()
                ? Optional.of(y.add(way.multiply(ray.distance())))
                : Optional.empty();
    }

    private Vector3D normal(Surface surface) {
        Vector3D normal = scene.normal(surface.firstFacet());
        return surface.back() ? normal.negate() : normal;
    }
}
