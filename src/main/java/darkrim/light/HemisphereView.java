package darkrim.light;

import darkrim.sampling.Streams;
import darkrim.scene.Scene;
import darkrim.scene.Warmth;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Looks from a point to all sides, by rays of density cos(theta) / pi, one in each cell of a square grid over both numbers that a direction is
 * made of (stratified sampling; Shirley, "Discrepancy as a quality measure for sample distributions", 1991, from memory). Pi times the share of rays
 * that meet a surface is its projected solid angle. Safe for use by many threads.
 */
public final class HemisphereView {
    private final Scene scene;
    private final FacetTree tree;
    private final PupilSource pupil;
    private final StartPoints starts;
    private final Streams streams;
    private final Optional<Warmth> warmth;
    private final Reflectances reflectances;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param warmth what is warm; without it no warm light is followed
     * @param seed seed of the random streams
     */
    public HemisphereView(Scene scene, FacetTree tree, Optional<Warmth> warmth, long seed) {
        this.scene = scene;
        this.tree = tree;
        this.pupil = PupilSource.withoutWindow(scene.beam());
        this.starts = new StartPoints(scene.corners(), tree);
        this.streams = new Streams(seed);
        this.warmth = warmth;
        this.reflectances = new Reflectances(scene);
    }

    /**
     * One bundle of rays; the same bits on any thread.
     *
     * @param name name of the random stream: points of one name are looked at with the same random numbers
     * @param position the point, mm, clear of the surface on which it lies
     * @param normal the direction it faces, unit length
     * @param batch number of the bundle
     * @param side rays along each side of the grid
     */
    public HemisphereTally batch(String name, Vector3D position, Vector3D normal, long batch, int side) {
        UniformRandomProvider random = streams.stream(name + " hemisphere", batch);
        HemisphereTally tally = new HemisphereTally(scene.surfaces().size(), (long) side * side);
        Bundle bundle = new Bundle(random, tally);
        for (int i = 0; i < side; i++) {
            for (int j = 0; j < side; j++) {
                double radius2 = (i + random.nextDouble()) / side;
                bundle.look(position, normal, radius2, (j + random.nextDouble()) / side);
            }
        }
        return tally;
    }

    /** The rays of one bundle, one after the other. */
    private final class Bundle {
        private final UniformRandomProvider random;
        private final HemisphereTally tally;
        private final DirectLight direct = new DirectLight(scene, tree, pupil);
        /** Absent where nothing is said of temperatures; a null check in the hot code is cheaper than an Optional. */
        private final WarmPath path;

        private final Warmth warm;
        private final Directions directions = new Directions();
        private final Ray ray = new Ray();
        private final Ray toPupil = new Ray();
        private final double[] placed = new double[3];
        private final double[] inPupil = new double[2];

        Bundle(UniformRandomProvider random, HemisphereTally tally) {
            this.random = random;
            this.tally = tally;
            warm = warmth.orElse(null);
            path = warm == null ? null : new WarmPath(scene, tree, starts, warm, reflectances, direct);
        }

        void look(Vector3D from, Vector3D normal, double radius2, double turn) {
            directions.cosine(radius2, turn, normal.getX(), normal.getY(), normal.getZ());
            double dx = directions.x;
            double dy = directions.y;
            double dz = directions.z;
            double x = from.getX();
            double y = from.getY();
            double z = from.getZ();
            ray.set(x, y, z, dx, dy, dz, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            int facet = tree.nearest(ray);
            if (facet < 0) {
                miss(direct.along(x, y, z, dx, dy, dz, Ray.NO_PLANE));
                return;
            }
            int met = scene.surfaceMet(facet, dx, dy, dz);
            if (met == Scene.INSIDE) {
                tally.see(tally.inside());
                if (warm != null) {
                    // Nothing is known of what is in there: never too little.
                    tally.emit(tally.inside(), warm.mostPhotons(), warm.mostWatts());
                }
                return;
            }
            tally.see(met);
            if (isLit(met, facet)) {
                tally.light(met);
            }
            if (warm != null) {
                warm(met, facet, dx, dy, dz);
            }
        }

        private void miss(boolean onPupil) {
            int number = onPupil ? tally.pupil() : tally.open();
            tally.see(number);
            if (warm != null) {
                tally.emit(
                        number,
                        onPupil ? warm.pupilPhotons() : warm.surroundingsPhotons(),
                        onPupil ? warm.pupilWatts() : warm.surroundingsWatts());
            }
        }

        /** Whether a point of the pupil, drawn at random, shines on the point that the ray met. */
        private boolean isLit(int met, int facet) {
            pupil.outline.place(random.nextDouble(), random.nextDouble(), inPupil);
            boolean front = !scene.surfaces().get(met).back();
            starts.place(facet, ray.weightA(), ray.weightB(), front, placed);
            if (!(pupil.height(placed[0], placed[1], placed[2]) > 0)) {
                return false;
            }
            double ex = pupil.cx + inPupil[0] * pupil.ux + inPupil[1] * pupil.vx - placed[0];
            double ey = pupil.cy + inPupil[0] * pupil.uy + inPupil[1] * pupil.vy - placed[1];
            double ez = pupil.cz + inPupil[0] * pupil.uz + inPupil[1] * pupil.vz - placed[2];
            double along = ex * scene.normal(facet, 0) + ey * scene.normal(facet, 1) + ez * scene.normal(facet, 2);
            if (!((front ? along : -along) > 0) || !pupil.passes(placed[0], placed[1], placed[2], ex, ey, ez)) {
                return false;
            }
            toPupil.set(placed[0], placed[1], placed[2], ex, ey, ez, 1, scene.plane(facet));
            return !tree.blocked(toPupil);
        }

        private void warm(int met, int facet, double dx, double dy, double dz) {
            double away = dx * scene.normal(facet, 0) + dy * scene.normal(facet, 1) + dz * scene.normal(facet, 2);
            double reflected = reflectances.total(met, Math.min(1, Math.abs(away)));
            double emissivity = warm.emissivity(met, reflected);
            tally.emit(met, emissivity * warm.photons(met), emissivity * warm.watts(met));
            if (reflected > 0) {
                path.follow(random, met, facet, ray, dx, dy, dz);
                tally.reflect(met, path.photons, path.watts);
            }
        }
    }
}
