package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Scenes made by chance for tests: blocks, plates with openings and sheets between a pupil and a few faces. */
final class RandomScenes {
    private RandomScenes() {}

    static Scene scene(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        TestParts parts = new TestParts();
        boolean snapped = random.nextBoolean();
        int count = 1 + random.nextInt(6);
        for (int i = 0; i < count; i++) {
            parts.placed(placement(random, snapped));
            part(parts, "part[" + i + "]", random, snapped);
        }
        parts.placed(UnaryOperator.identity());
        for (int i = 0; i < 3; i++) {
            double x = snap(12 * random.nextDouble() - 6, snapped);
            double y = snap(12 * random.nextDouble() - 6, snapped);
            double w = snap(0.5 + 4 * random.nextDouble(), snapped) + 0.5;
            if (random.nextBoolean()) {
                parts.sheet("face[" + i + "]", x, x + w, y, y + 1, i == 0 ? 0 : snap(3 * random.nextDouble(), snapped));
            } else {
                parts.block("face[" + i + "]", x, x + w, y, y + w, -1, 0);
            }
        }
        return parts.build(beam(random));
    }

    private static void part(TestParts parts, String name, SplittableRandom random, boolean snapped) {
        double z = snap(1 + 25 * random.nextDouble(), snapped);
        double x = snap(16 * random.nextDouble() - 8, snapped);
        double y = snap(16 * random.nextDouble() - 8, snapped);
        double size = snap(2 + 25 * random.nextDouble() * random.nextDouble(), snapped) + 1;
        switch (random.nextInt(4)) {
            case 0 -> parts.sheet(name, x - size, x + size, y - size, y + size, z);
            case 1 ->
                parts.block(
                        name,
                        x - size,
                        x + size,
                        y - size,
                        y + size,
                        z,
                        z + snap(0.01 + random.nextDouble(), snapped) + 0.5);
            case 2 -> {
                double a = size * (0.05 + 0.5 * random.nextDouble());
                parts.plate(
                        name,
                        new double[] {x - 3 * size, x + 3 * size, y - 3 * size, y + 3 * size},
                        List.of(new double[] {x - a, x + a, y - a, y + a}),
                        new double[][] {{z + 1, 0}, {z + 0.9, 0}, {z, random.nextDouble() - 0.5 * Math.min(1, a)}});
            }
            default ->
                parts.frustum(
                        name,
                        new double[] {x - 1, x + size, y - 1, y + size},
                        -1 + z * random.nextInt(2),
                        new double[] {x - 0.5, x + size + 0.5, y - 0.2, y + 0.5 * size + 0.1},
                        z + 0.5);
        }
    }

    private static double snap(double value, boolean snapped) {
        return snapped ? Math.rint(value) : value;
    }

    private static UnaryOperator<Vector3D> placement(SplittableRandom random, boolean snapped) {
        if (snapped || random.nextInt(3) == 0) {
            return UnaryOperator.identity();
        }
        Vector3D axis = Vector3D.of(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() - 0.3);
        QuaternionRotation turn = QuaternionRotation.fromAxisAngle(axis, 0.5 * random.nextDouble());
        return turn::apply;
    }

    private static Beam beam(SplittableRandom random) {
        Outline outline = switch (random.nextInt(3)) {
            case 0 -> Ring.disc(2 + 20 * random.nextDouble());
            case 1 -> new Ring(10, 9 * random.nextDouble());
            default ->
                Polygon.of(List.of(
                        Vector2D.of(-9, -5),
                        Vector2D.of(8, -6),
                        Vector2D.of(1, 1),
                        Vector2D.of(0, 7),
                        Vector2D.of(-6, 8)));
        };
        Vector3D origin = Vector3D.of(
                20 * random.nextDouble() - 10, 20 * random.nextDouble() - 10, 60 + 100 * random.nextDouble());
        Pupil pupil = new Pupil(
                outline,
                Frame.about(
                        origin,
                        random.nextBoolean()
                                ? Vector3D.Unit.MINUS_Z
                                : Vector3D.of(0.2 * random.nextDouble(), -0.1, -1)));
        Optional<FieldLimit> limit = Optional.empty();
        if (random.nextInt(3) == 0) {
            double z = random.nextBoolean() ? -2 : 15;
            Outline field = random.nextBoolean() ? new Ring(4 + 3 * random.nextDouble(), 1) : Polygon.rectangle(6, 8);
            limit = Optional.of(new FieldLimit(field, Frame.about(Vector3D.of(1, 0, z), Vector3D.of(0.1, 0, 1))));
        }
        return new Beam(pupil, limit, OptionalDouble.empty());
    }

    /** Points of a surface and of the pupil by chance; how many of the rays are clear. */
    static int clearRays(Scene scene, FacetTree tree, Surface surface, int rays, SplittableRandom random) {
        Ray ray = new Ray();
        double[] at = new double[2];
        double[] upTo = new double[surface.facetCount()];
        double sum = 0;
        for (int i = 0; i < upTo.length; i++) {
            sum += scene.facetArea(surface.firstFacet() + i);
            upTo[i] = sum;
        }
        int clear = 0;
        for (int i = 0; i < rays; i++) {
            double pick = sum * random.nextDouble();
            int k = 0;
            while (k + 1 < upTo.length && pick > upTo[k]) {
                k++;
            }
            int f = surface.firstFacet() + k;
            Vector3D to = TestParts.point(scene, f, random);
            scene.beam().pupil().outline().place(random.nextDouble(), random.nextDouble(), at);
            Vector3D from = scene.beam().pupil().frame().at(at[0], at[1]);
            Vector3D way = from.subtract(to);
            double facing = way.dot(scene.normal(f)) * (surface.back() ? -1 : 1);
            if (facing <= 0 || way.dot(scene.beam().pupil().frame().normal()) >= 0) {
                continue;
            }
            boolean inField = scene.beam()
                    .fieldLimit()
                    .map(l -> l.passes(to.getX(), to.getY(), to.getZ(), way.getX(), way.getY(), way.getZ()))
                    .orElse(true);
            if (inField) {
                ray.set(to, way, 1, scene.plane(f));
                clear += tree.blocked(ray) ? 0 : 1;
            }
        }
        return clear;
    }

    /** A count of verdicts. */
    record Tally(int dark, int lit, int undecided, double openFraction, long pairs, long rays) {}

    /** Prints the tally of a range of scenes: first seed, number, rays for each. */
    public static void main(String[] args) {
        List<String> found = new ArrayList<>();
        Tally tally =
                contradictions(Long.parseLong(args[0]), Integer.parseInt(args[1]), Integer.parseInt(args[2]), found);
        System.out.println(tally + " " + found);
    }

    /** Proves every face of some scenes and shoots rays at those proved dark; the list names every contradiction. */
    static Tally contradictions(long firstSeed, int scenes, int raysPerScene, List<String> found) {
        int[] counts = new int[3];
        double open = 0;
        long pairs = 0;
        long rays = 0;
        for (long seed = firstSeed; seed < firstSeed + scenes; seed++) {
            Scene scene = scene(seed);
            FacetTree tree = TestParts.tree(scene);
            DarknessProof proof = new DarknessProof(scene, tree, new ProofSettings(0.02, 3000, 1e-6));
            SplittableRandom random = new SplittableRandom(-seed);
            List<Surface> dark = new ArrayList<>();
            for (Surface surface : scene.surfaces()) {
                Darkness darkness = proof.of(surface);
                pairs += darkness.effort().pairs();
                if (darkness instanceof Darkness.Dark) {
                    counts[0]++;
                    dark.add(surface);
                } else if (darkness instanceof Darkness.Lit lit) {
                    counts[1]++;
                    check(scene, lit.witness(), seed, found);
                } else if (darkness instanceof Darkness.Undecided undecided) {
                    counts[2]++;
                    open += undecided.openFraction();
                }
            }
            for (Surface surface : dark) {
                int share = raysPerScene / dark.size();
                rays += share;
                int clear = clearRays(scene, tree, surface, share, random);
                if (clear > 0) {
                    found.add(
                            "seed " + seed + " " + surface.name() + ": " + clear + " of " + share + " rays are clear");
                }
            }
        }
        return new Tally(counts[0], counts[1], counts[2], open, pairs, rays);
    }

    private static void check(Scene scene, WitnessRay witness, long seed, List<String> found) {
        Vector3D way = witness.to().subtract(witness.from());
        Ray ray = new Ray();
        ray.set(witness.from(), way, 1 - 1e-9, Ray.NO_PLANE);
        if (TestParts.tree(scene).blocked(ray)) {
            found.add("seed " + seed + ": the witness for " + witness.toSurface() + " is blocked");
        }
    }
}
