package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * The light of a star gathered back from a receiver, which shares no estimator with {@link StarLight}.
 *
 * <p>A point x of a surface is lit through one point p of the pupil only, where the line through x and the focus s meets it. A pupil element dA
 * sends dPhi = Phi dA / A into the solid angle dA cos(theta_p) / d_p2 about s, so E(x) = (Phi / A) d_p2 / cos(theta_p) cos(theta_x) / d_x2 with
 * distances from s. Flat mirrors show the same star with its focus mirrored (image method).
 */
final class GatheredStar {
    private final Scene scene;
    private final FacetTree tree;
    private final Vector3D focus;
    private final Ray ray = new Ray();

    GatheredStar(Scene scene, FacetTree tree, Vector3D focus) {
        this.scene = scene;
        this.tree = tree;
        this.focus = focus;
    }

    /** Share of the flux that arrives on a flat surface after one reflection by a flat surface. */
    Estimate share(Surface receiver, Surface reflector, UniformRandomProvider random, int samples) {
        Accumulator sum = new Accumulator();
        Directions directions = new Directions();
        Vector3D normal = normal(receiver);
        for (int i = 0; i < samples; i++) {
            int facet = receiver.firstFacet() + random.nextInt(receiver.facetCount());
            double root = Math.sqrt(random.nextDouble());
            double second = root * (1 - random.nextDouble());
            Vector3D y = Vector3D.Sum.create()
                    .addScaled(1 - root, scene.corner(facet, 0))
                    .addScaled(second, scene.corner(facet, 1))
                    .addScaled(root - second, scene.corner(facet, 2))
                    .get()
                    .add(normal.multiply(1e-9));
            directions.cosine(random, normal.getX(), normal.getY(), normal.getZ());
            Vector3D way = Vector3D.of(directions.x, directions.y, directions.z);
            sum.add(receiver.area() * (scattered(y, way, reflector) + mirrored(y, normal, reflector)));
        }
        return sum.estimate(Double.POSITIVE_INFINITY);
    }

    private double scattered(Vector3D y, Vector3D way, Surface reflector) {
        Optional<Vector3D> x = met(y, way, reflector);
        if (x.isEmpty()) {
            return 0;
        }
        Vector3D normal = normal(reflector);
        Vector3D toSource = toward(x.get());
        double in = toSource.dot(normal);
        double out = -way.dot(normal);
        if (!(in > 0 && out > 0)) {
            return 0;
        }
        Reflection reflection = reflector.finish().reflection();
        double brdfPi = reflection.broad(in, out) + Math.PI * reflection.lobe(in, out, -way.dot(toSource));
        return brdfPi * facing(x.get(), normal) * in / focus.subtract(x.get()).normSq();
    }

    private double mirrored(Vector3D y, Vector3D facingWay, Surface reflector) {
        Vector3D normal = normal(reflector);
        Vector3D image = focus.subtract(
                normal.multiply(2 * normal.dot(focus.subtract(scene.corner(reflector.firstFacet(), 0)))));
        // Light comes to y on the line through the image, from the side of the mirror.
        Vector3D way = y.subtract(image).normalize();
        if (way.dot(normal) > 0) {
            way = way.negate();
        }
        double cosine = facingWay.dot(way);
        if (!(cosine > 0)) {
            return 0;
        }
        return met(y, way, reflector)
                .map(x -> reflector
                                .finish()
                                .reflection()
                                .mirror(Math.abs(toward(x).dot(normal)))
                        * facing(x, normal)
                        * cosine
                        / image.subtract(y).normSq())
                .orElse(0.0);
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
        ray.set(
                from.getX(),
                from.getY(),
                from.getZ(),
                toSource.getX(),
                toSource.getY(),
                toSource.getZ(),
                away,
                Ray.NO_PLANE);
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
        ray.set(
                y.getX(),
                y.getY(),
                y.getZ(),
                way.getX(),
                way.getY(),
                way.getZ(),
                Double.POSITIVE_INFINITY,
                Ray.NO_PLANE);
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
