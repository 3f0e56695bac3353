package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Small scenes full of what is awkward: things that touch, lie in one plane, share corners, overlap, stand edge-on or leave slits. */
final class AttackScenes {
    private static final int KINDS = 10;

    private final SplittableRandom random;
    private final TestParts parts = new TestParts();
    private final UnaryOperator<Vector3D> turn;

    private AttackScenes(long seed) {
        random = new SplittableRandom(seed);
        QuaternionRotation rotation = QuaternionRotation.fromAxisAngle(
                Vector3D.of(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() + 0.01),
                7 * random.nextDouble());
        turn = random.nextInt(3) == 0 ? rotation::apply : UnaryOperator.identity();
        parts.placed(turn);
    }

    static Scene scene(long seed) {
        AttackScenes made = new AttackScenes(seed);
        int count = 1 + made.random.nextInt(3);
        for (int i = 0; i < count; i++) {
            made.add("part[" + i + "]", made.random.nextInt(KINDS));
        }
        made.parts.sheet("face", -1, 1, -1, 1, 0);
        return made.parts.build(made.beam());
    }

    private int whole(int from, int to) {
        return from + random.nextInt(to - from + 1);
    }

    /** A width between just above the gap width and a tenth of a millimetre. */
    private double slit() {
        return 1.3e-6 * Math.pow(10, 5 * random.nextDouble());
    }

    private void add(String name, int kind) {
        double z = whole(1, 4);
        switch (kind) {
            case 0 -> triangles(name, whole(2, 12));
            case 1 -> {
                for (int i = 0; i < 3; i++) {
                    double x = whole(-3, 2);
                    double y = whole(-3, 2);
                    double low = whole(0, 4);
                    parts.block(name + "/" + i, x, x + whole(1, 4), y, y + whole(1, 4), low, low + whole(1, 2) * 0.5);
                }
            }
            case 2 -> {
                for (int i = 0; i < 3; i++) {
                    double x = whole(-3, 2);
                    double y = whole(-3, 2);
                    parts.sheet(name + "/" + i, x, x + whole(1, 5), y, y + whole(1, 5), z);
                }
            }
            case 3 -> {
                double w = slit();
                double tilt = 0.5 * (random.nextDouble() - 0.5);
                double thick = 0.01 + random.nextDouble();
                parts.frustum(name + "/a", new double[] {-6, 0, -6, 6}, z, new double[] {-6, tilt, -6, 6}, z + thick);
                parts.frustum(
                        name + "/b",
                        new double[] {w, 6, -6.5, 5.5},
                        z,
                        new double[] {w + tilt, 6, -6.5, 5.5},
                        z + thick);
            }
            case 4 -> {
                double w = slit();
                double step = 0.3 + random.nextDouble();
                for (int i = -4; i <= 4; i++) {
                    parts.block(name + "/" + i, i * step, (i + 1) * step - (i == 1 ? w : 0), -6, 6, z, z + 0.25);
                }
            }
            case 5 -> mesh(name, z, whole(2, 6), true);
            case 6 -> {
                double w = slit();
                parts.sheet(name + "/a", -6, 0, -6, 6, z).sheet(name + "/b", w, 6, -6, 6, z);
                parts.sheet(name + "/c", -1, 1, -6, -whole(0, 1) * 0.5, z);
                parts.sheet(name + "/d", -1, 1, random.nextBoolean() ? slit() : 0, 6, z);
            }
            case 7 -> {
                double w = slit();
                double x = random.nextDouble() - 0.5;
                parts.plate(
                        name,
                        new double[] {-6, 6, -6, 6},
                        List.of(new double[] {x, x + w, x, x + slit()}),
                        new double[][] {{z + 0.2, 0}, {z + 0.1, 0}, {z, random.nextBoolean() ? 0.1 : 0}});
            }
            case 8 -> {
                // A box about the face, open above or with a lid that leaves a slit; some walls only touch.
                double h = whole(1, 3);
                double w = random.nextBoolean() ? slit() : 0;
                parts.block(name + "/west", -2, -1, -2, 2, -1, h).block(name + "/east", 1, 2, -2, 2, -1, h);
                parts.block(name + "/south", -1, 1, -2, -1, -1, h).block(name + "/north", -1, 1, 1, 2, -1, h);
                if (random.nextInt(3) > 0) {
                    parts.block(name + "/lid", -2, 2, -2, 2 - random.nextInt(2) * 0.75, h + w, h + w + 0.1);
                }
                if (random.nextBoolean()) {
                    parts.block(name + "/inner", -0.5, 0.5, -0.5, 0.5, 0, 0.5 * h);
                }
            }
            default -> strip(name, z);
        }
    }

    private Vector3D lattice() {
        return turn.apply(Vector3D.of(whole(-3, 3), whole(-3, 3), whole(0, 4)));
    }

    /** Triangles between points of a grid, every side in use more than once. */
    private void triangles(String name, int count) {
        SceneBuilder builder = parts.builder();
        builder.sheet(name, Finish.ABSORBER, name + "/back", Finish.ABSORBER, TestParts.NOWHERE);
        Vector3D[] pool = new Vector3D[6];
        for (int i = 0; i < pool.length; i++) {
            pool[i] = lattice();
        }
        int made = 0;
        while (made < count) {
            Vector3D a = pool[random.nextInt(6)];
            Vector3D b = pool[random.nextInt(6)];
            Vector3D c = random.nextInt(4) == 0 ? lattice() : pool[random.nextInt(6)];
            if (b.subtract(a).cross(c.subtract(a)).norm() > 1e-3) {
                builder.triangle(name, a, b, c);
                made++;
            }
        }
    }

    /** A meshed sheet, level or bulging, with a triangle missing. */
    private void mesh(String name, double z, int n, boolean torn) {
        SceneBuilder builder = parts.builder();
        builder.sheet(name, Finish.ABSORBER, name + "/back", Finish.ABSORBER, TestParts.NOWHERE);
        double[][] heights = new double[n + 1][n + 1];
        double bulge = random.nextBoolean() ? 0 : 0.5;
        for (double[] row : heights) {
            for (int j = 0; j <= n; j++) {
                row[j] = z + bulge * random.nextDouble();
            }
        }
        int missing = torn ? random.nextInt(2 * n * n) : -1;
        double step = 12.0 / n;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                Vector3D[] c = new Vector3D[4];
                for (int k = 0; k < 4; k++) {
                    int p = i + (k == 1 || k == 2 ? 1 : 0);
                    int q = j + (k > 1 ? 1 : 0);
                    c[k] = turn.apply(Vector3D.of(-6 + p * step, -6 + q * step, heights[p][q]));
                }
                if (missing != 2 * (i * n + j)) {
                    builder.triangle(name, c[0], c[1], c[2]);
                }
                if (missing != 2 * (i * n + j) + 1) {
                    builder.triangle(name, c[0], c[2], c[3]);
                }
            }
        }
    }

    /** A band closed to a ring with half turns. */
    private void strip(String name, double z) {
        SceneBuilder builder = parts.builder();
        builder.sheet(name, Finish.ABSORBER, name + "/back", Finish.ABSORBER, TestParts.NOWHERE);
        int n = whole(5, 12);
        int halves = whole(0, 3);
        Vector3D[][] rim = new Vector3D[n][2];
        for (int i = 0; i < n; i++) {
            double a = 2 * Math.PI * i / n;
            double t = halves * Math.PI * i / n;
            for (int k = 0; k < 2; k++) {
                double w = k == 0 ? 0.9 : -0.9;
                double r = 1 + w * Math.cos(t);
                rim[i][k] = turn.apply(Vector3D.of(r * Math.cos(a), r * Math.sin(a), z + 0.4 * w * Math.sin(t)));
            }
        }
        for (int i = 0; i < n; i++) {
            Vector3D[] p = rim[i];
            Vector3D[] next = rim[(i + 1) % n];
            Vector3D[] q = i + 1 == n && halves % 2 == 1 ? new Vector3D[] {next[1], next[0]} : next;
            builder.triangle(name, p[0], q[0], q[1]).triangle(name, p[0], q[1], p[1]);
        }
    }

    private Beam beam() {
        Outline outline = switch (random.nextInt(5)) {
            case 0 -> Ring.disc(0.5 * whole(1, 6));
            case 1 -> new Ring(2, 0.1 + 1.8 * random.nextDouble());
            case 2 -> Polygon.rectangle(whole(1, 6), whole(1, 6));
            case 3 -> Polygon.rectangle(1e-3 * whole(1, 6), 3);
            default ->
                Polygon.of(List.of(
                        Vector2D.of(-2, -2),
                        Vector2D.of(2, -2),
                        Vector2D.of(0, 0),
                        Vector2D.of(1, 2),
                        Vector2D.of(-2, 1)));
        };
        Vector3D origin;
        Vector3D normal;
        if (random.nextInt(4) == 0) {
            // From the side: the planes of faces cut the pupil.
            origin = Vector3D.of(8, whole(-1, 1), whole(0, 3));
            normal = Vector3D.of(-1, 0, random.nextBoolean() ? 0 : -0.1);
        } else {
            origin = Vector3D.of(whole(-2, 2), whole(-2, 2), whole(5, 12));
            normal = random.nextBoolean() ? Vector3D.of(0, 0, -1) : Vector3D.of(0.3, random.nextDouble() - 0.5, -1);
        }
        Pupil pupil = new Pupil(outline, Frame.about(turn.apply(origin), turn.apply(normal)));
        Optional<FieldLimit> limit = Optional.empty();
        if (random.nextInt(3) == 0) {
            Outline field = random.nextBoolean()
                    ? new Ring(1 + random.nextDouble(), random.nextDouble())
                    : Polygon.rectangle(slit(), 4);
            Vector3D centre = Vector3D.of(whole(-1, 1), 0, random.nextBoolean() ? -whole(0, 5) : whole(0, 4) + 0.5);
            limit = Optional.of(new FieldLimit(
                    field, Frame.about(turn.apply(centre), turn.apply(Vector3D.of(0.2 * whole(-1, 1), 0, 1)))));
        }
        return new Beam(pupil, limit, OptionalDouble.empty());
    }
}
