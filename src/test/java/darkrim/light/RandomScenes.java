package darkrim.light;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Placement;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/** Random scenes from a seed: turned blocks and sheets under a pupil, alone or in a closed room. */
public final class RandomScenes {
    private final UniformRandomProvider random;

    public RandomScenes(long seed) {
        this.random = RandomSource.XO_SHI_RO_256_PP.create(seed);
    }

    /** Blocks and sheets between the focal plane and a pupil of random shape, some of them mirrors. */
    public Scene open(int bodies) {
        SceneBuilder builder = new SceneBuilder();
        addSheet(builder, "floor", square(40, Placement.NONE), finish(false));
        addBodies(builder, bodies, 25, 2, 30);
        return builder.build(beam(between(80, 160)));
    }

    /** A closed room with bodies in it; the pupil lies inside, below the ceiling. All walls share one reflectance. */
    public Scene room(int bodies, Finish everywhere) {
        SceneBuilder builder = new SceneBuilder();
        addBox(builder, "room", Vector3D.of(-50, -50, -20), Vector3D.of(50, 50, 90), Placement.NONE, everywhere, true);
        for (int i = 0; i < bodies; i++) {
            Placement placement = place(25, 0, 40);
            addBox(builder, "body" + i, Vector3D.of(-3, -3, -3), Vector3D.of(3, 3, 3), placement, everywhere, false);
        }
        return builder.build(beam(80));
    }

    private void addBodies(SceneBuilder builder, int bodies, double reach, double low, double high) {
        for (int i = 0; i < bodies; i++) {
            Placement placement = place(reach, low, high);
            Vector3D half = Vector3D.of(between(0.5, 8), between(0.5, 8), between(0.2, 6));
            if (random.nextDouble() < 0.6) {
                addBox(builder, "body" + i, half.negate(), half, placement, finish(true), false);
            } else {
                addSheet(builder, "sheet" + i, square(between(2, 12), placement), finish(true));
            }
        }
    }

    private Placement place(double reach, double low, double high) {
        return Placement.NONE
                .thenTurned(Vector3D.of(between(-1, 1), between(-1, 1), between(0.1, 1)), between(0, 360))
                .thenMoved(Vector3D.of(between(-reach, reach), between(-reach, reach), between(low, high)));
    }

    private Finish finish(boolean mayShine) {
        double diffuse = between(0.05, 0.6);
        return new Finish("some", diffuse, mayShine && random.nextDouble() < 0.4 ? between(0.1, 1 - diffuse) : 0);
    }

    private Beam beam(double distance) {
        Outline[] outlines = {
            Ring.disc(between(5, 20)),
            new Ring(between(10, 20), between(2, 8)),
            Polygon.rectangle(between(5, 30), between(5, 30))
        };
        Outline outline = outlines[random.nextInt(3)];
        Vector3D origin = Vector3D.of(between(-10, 10), between(-10, 10), distance);
        Vector3D down = Vector3D.of(between(-0.2, 0.2), between(-0.2, 0.2), -1);
        Pupil pupil = new Pupil(outline, Frame.about(origin, down));
        Optional<FieldLimit> field = random.nextDouble() < 0.4
                ? Optional.of(new FieldLimit(Polygon.rectangle(between(20, 60), between(20, 60)), Frame.LAYOUT))
                : Optional.empty();
        return new Beam(pupil, field, OptionalDouble.empty());
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private static Vector3D[] square(double side, Placement placement) {
        double h = side / 2;
        return new Vector3D[] {
            placement.point(Vector3D.of(-h, -h, 0)),
            placement.point(Vector3D.of(h, -h, 0)),
            placement.point(Vector3D.of(h, h, 0)),
            placement.point(Vector3D.of(-h, h, 0))
        };
    }

    private static void addSheet(SceneBuilder builder, String name, Vector3D[] c, Finish finish) {
        builder.sheet(name + "/front", finish, name + "/back", finish, Place.IN_CODE)
                .quad(name + "/front", c[0], c[1], c[2], c[3]);
    }

    /** A box whose faces look outward, or inward for a room. */
    static void addBox(
            SceneBuilder builder,
            String name,
            Vector3D low,
            Vector3D high,
            Placement placement,
            Finish finish,
            boolean inward) {
        Vector3D[] p = new Vector3D[8];
        for (int i = 0; i < 8; i++) {
            p[i] = placement.point(Vector3D.of(
                    (i & 1) == 0 ? low.getX() : high.getX(),
                    (i & 2) == 0 ? low.getY() : high.getY(),
                    (i & 4) == 0 ? low.getZ() : high.getZ()));
        }
        int[][] faces = {{0, 4, 6, 2}, {1, 3, 7, 5}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 2, 3, 1}, {4, 5, 7, 6}};
        String[] labels = {"-x", "+x", "-y", "+y", "-z", "+z"};
        for (int i = 0; i < 6; i++) {
            int[] f = faces[i];
            String face = name + "/" + labels[i];
            builder.solid(face, finish, Place.IN_CODE);
            if (inward) {
                builder.quad(face, p[f[3]], p[f[2]], p[f[1]], p[f[0]]);
            } else {
                builder.quad(face, p[f[0]], p[f[1]], p[f[2]], p[f[3]]);
            }
        }
    }
}
