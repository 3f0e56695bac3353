package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Lines tried against every facet of a scene, without a tree, and aimed at the edges: where a proof is wrong, it is wrong there. */
final class AttackRays {
    /** Facets no higher than this above the plane of a surface lie in it: they do not stop what arrives, mm. */
    private static final double IN_PLANE = 1e-9;

    private final Scene scene;
    private final double[] corners;
    private final SplittableRandom random;
    private long rays;

    /** A line from the pupil to a facet of a surface, and how far the nearest thing in its way is from it, mm. */
    record Line(Vector3D from, Vector3D to, int facet, double clearance) {}

    AttackRays(Scene scene, SplittableRandom random) {
        this.scene = scene;
        this.random = random;
        corners = scene.copyCorners();
    }

    /** Lines looked at. */
    long rays() {
        return rays;
    }

    /** A clear line near some edges to a surface, if this try finds one. */
    Optional<Line> tryOne(Surface surface) {
        rays++;
        int f = surface.firstFacet() + random.nextInt(surface.facetCount());
        Frame pupil = scene.beam().pupil().frame();
        Vector3D to;
        Vector3D through;
        int kind = random.nextInt(4);
        if (kind == 0) {
            // Through the neighbourhood of two edges, wherever that leads.
            Vector3D one = nearEdge();
            Vector3D two = nearEdge();
            double from = scene.normal(f).dot(one.subtract(scene.corner(f, 0)));
            double until = scene.normal(f).dot(two.subtract(scene.corner(f, 0)));
            if (from == until) {
                return Optional.empty();
            }
            to = one.lerp(two, from / (from - until));
            through = one;
        } else {
            to = random.nextInt(3) == 0 ? pull(f) : within(f);
            through = nearEdge();
        }
        Vector3D from;
        if (kind == 1) {
            from = onPupil();
        } else {
            double a = pupil.height(to);
            double b = pupil.height(through);
            if (a == b) {
                return Optional.empty();
            }
            from = to.lerp(through, a / (a - b));
            if (kind == 2) {
                // From the pupil past the edge to where it leads.
                from = onPupil();
                double c = scene.normal(f).dot(from.subtract(scene.corner(f, 0)));
                double d = scene.normal(f).dot(through.subtract(scene.corner(f, 0)));
                if (c == d) {
                    return Optional.empty();
                }
                to = from.lerp(through, c / (c - d));
            }
        }
        return from.isFinite() && to.isFinite() ? judged(from, to, f, surface.back()) : Optional.empty();
    }

    private Optional<Line> judged(Vector3D from, Vector3D to, int f, boolean back) {
        Frame pupil = scene.beam().pupil().frame();
        Vector3D way = from.subtract(to);
        double facing = way.dot(scene.normal(f)) * (back ? -1 : 1);
        boolean inField = scene.beam()
                .fieldLimit()
                .map(l -> l.passes(to.getX(), to.getY(), to.getZ(), way.getX(), way.getY(), way.getZ()))
                .orElse(true);
        if (!(facing > 1e-6 && way.dot(pupil.normal()) < -1e-6)
                || !scene.beam().pupil().outline().contains(pupil.inU(from), pupil.inV(from))
                || !inField
                || !isWithin(f, to, 0)) {
            return Optional.empty();
        }
        double clearance = clearance(from, to, f, back);
        return clearance > 0 ? Optional.of(new Line(from, to, f, clearance)) : Optional.empty();
    }

    /** How far everything in the way stays from a line; 0 if something meets it. */
    double clearance(Vector3D from, Vector3D to, int facet, boolean back) {
        Vector3D facing = back ? scene.normal(facet).negate() : scene.normal(facet);
        Vector3D at = scene.corner(facet, 0);
        double[] s = {from.getX(), from.getY(), from.getZ()};
        double[] e = {to.getX(), to.getY(), to.getZ()};
        boolean[] passed = new boolean[scene.facetCount()];
        boolean[] unsure = new boolean[passed.length];
        for (int f = 0; f < passed.length; f++) {
            passed[f] = isBelow(f, facing, at)
                    || isBelow(
                            f,
                            scene.beam().pupil().frame().normal(),
                            scene.beam().pupil().frame().origin());
            Crossing crossing = passed[f] ? Crossing.NO : Crossing.of(s, e, corners, 9 * f);
            if (crossing == Crossing.YES) {
                return 0;
            }
            unsure[f] = crossing == Crossing.UNSURE;
        }
        double least = Double.POSITIVE_INFINITY;
        for (int f = 0; f < passed.length; f++) {
            if (!passed[f]) {
                double distance = Math.min(apart(from, f), apart(to, f));
                for (int k = 0; k < 3; k++) {
                    distance = Math.min(distance, apart(from, to, scene.corner(f, k), scene.corner(f, (k + 1) % 3)));
                }
                // A line that runs along a facet, or so near an edge that rounding hides which side: met, unless
                // plainly apart.
                least = Math.min(least, unsure[f] && distance <= IN_PLANE ? 0 : distance);
            }
        }
        return least;
    }

    private boolean isBelow(int f, Vector3D facing, Vector3D at) {
        for (int k = 0; k < 3; k++) {
            if (facing.dot(scene.corner(f, k).subtract(at)) > IN_PLANE) {
                return false;
            }
        }
        return true;
    }

    /** Distance of a point from the inside of a facet; infinite where its foot lies outside. */
    private double apart(Vector3D point, int f) {
        double height = scene.normal(f).dot(point.subtract(scene.corner(f, 0)));
        return isWithin(f, point.subtract(scene.normal(f).multiply(height)), 0)
                ? Math.abs(height)
                : Double.POSITIVE_INFINITY;
    }

    /** Whether a point of its plane lies in a facet, or no farther beyond its sides than a slack. */
    boolean isWithin(int f, Vector3D point, double slack) {
        for (int k = 0; k < 3; k++) {
            Vector3D a = scene.corner(f, k);
            Vector3D side = scene.corner(f, (k + 1) % 3).subtract(a);
            if (side.cross(point.subtract(a)).dot(scene.normal(f)) < -slack * side.norm()) {
                return false;
            }
        }
        return true;
    }

    /** Distance of two stretches (Ericson, Real-Time Collision Detection, 2005, 5.1.9). */
    static double apart(Vector3D p1, Vector3D q1, Vector3D p2, Vector3D q2) {
        Vector3D d1 = q1.subtract(p1);
        Vector3D d2 = q2.subtract(p2);
        Vector3D r = p1.subtract(p2);
        double a = d1.normSq();
        double e = d2.normSq();
        double f = d2.dot(r);
        double c = d1.dot(r);
        double b = d1.dot(d2);
        double denominator = a * e - b * b;
        double s = denominator > 0 ? Math.min(1, Math.max(0, (b * f - c * e) / denominator)) : 0;
        double t = (b * s + f) / e;
        if (t < 0) {
            t = 0;
            s = Math.min(1, Math.max(0, -c / a));
        } else if (t > 1) {
            t = 1;
            s = Math.min(1, Math.max(0, (b - c) / a));
        }
        return p1.add(d1.multiply(s)).distance(p2.add(d2.multiply(t)));
    }

    private Vector3D onPupil() {
        double[] at = new double[2];
        scene.beam().pupil().outline().place(random.nextDouble(), random.nextDouble(), at);
        return scene.beam().pupil().frame().at(at[0], at[1]);
    }

    private Vector3D within(int f) {
        double root = Math.sqrt(random.nextDouble());
        double share = random.nextDouble();
        return scene.corner(f, 0)
                .multiply(1 - root)
                .add(scene.corner(f, 1).multiply(root * (1 - share)))
                .add(scene.corner(f, 2).multiply(root * share));
    }

    /** Near the rim of a facet. */
    private Vector3D pull(int f) {
        int k = random.nextInt(3);
        Vector3D rim = scene.corner(f, k).lerp(scene.corner(f, (k + 1) % 3), random.nextDouble());
        return rim.lerp(within(f), Math.pow(10, -6 * random.nextDouble()));
    }

    private Vector3D nearEdge() {
        int f = random.nextInt(scene.facetCount());
        int k = random.nextInt(3);
        Vector3D point = scene.corner(f, k).lerp(scene.corner(f, (k + 1) % 3), random.nextDouble());
        double off = Math.pow(10, -6.5 + 6.5 * random.nextDouble());
        return point.add(Vector3D.of(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() - 0.5)
                .multiply(2 * off));
    }
}
