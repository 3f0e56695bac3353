package darkrim.shadow;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Triangulation;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Closed solids and sheets for the tests of shadows; faces of a solid share the corners of their edges to the last bit. */
final class TestParts {
    static final Place NOWHERE = Place.IN_CODE;

    private final SceneBuilder builder = new SceneBuilder();
    private UnaryOperator<Vector3D> placement = UnaryOperator.identity();

    static Pupil pupilAt(double height, Outline outline) {
        return new Pupil(
                outline,
                new Frame(
                        Vector3D.of(0, 0, height), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y, Vector3D.Unit.MINUS_Z));
    }

    static FacetTree tree(Scene scene) {
        return FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
    }

    static Darkness prove(Scene scene, String surface) {
        return new DarknessProof(scene, tree(scene)).of(scene.surface(surface).orElseThrow());
    }

    /** A point of a facet, evenly by chance. */
    static Vector3D point(Scene scene, int facet, SplittableRandom random) {
        double root = Math.sqrt(random.nextDouble());
        double share = random.nextDouble();
        return Vector3D.Sum.create()
                .addScaled(1 - root, scene.corner(facet, 0))
                .addScaled(root * (1 - share), scene.corner(facet, 1))
                .addScaled(root * share, scene.corner(facet, 2))
                .get();
    }

    static Margins margins(Scene scene) {
        return new Margins(scene, tree(scene));
    }

    TestParts placed(UnaryOperator<Vector3D> by) {
        placement = by;
        return this;
    }

    SceneBuilder builder() {
        return builder;
    }

    Scene build(Beam beam) {
        return builder.build(beam);
    }

    private Vector3D at(double x, double y, double z) {
        return placement.apply(Vector3D.of(x, y, z));
    }

    private TestParts face(String name, Vector3D a, Vector3D b, Vector3D c, Vector3D d) {
        builder.solid(name, Finish.ABSORBER, NOWHERE).quad(name, a, b, c, d);
        return this;
    }

    /** A sheet facing +z; its back is named with /back. */
    TestParts sheet(String name, double x0, double x1, double y0, double y1, double z) {
        builder.sheet(name, Finish.ABSORBER, name + "/back", Finish.ABSORBER, NOWHERE)
                .quad(name, at(x0, y0, z), at(x1, y0, z), at(x1, y1, z), at(x0, y1, z));
        return this;
    }

    /** A sheet from four corners, counter-clockwise from its front. */
    TestParts sheet(String name, Vector3D a, Vector3D b, Vector3D c, Vector3D d) {
        builder.sheet(name, Finish.ABSORBER, name + "/back", Finish.ABSORBER, NOWHERE)
                .quad(name, placement.apply(a), placement.apply(b), placement.apply(c), placement.apply(d));
        return this;
    }

    /** A block with faces name/-x, name/+x and so on. */
    TestParts block(String name, double x0, double x1, double y0, double y1, double z0, double z1) {
        return frustum(name, new double[] {x0, x1, y0, y1}, z0, new double[] {x0, x1, y0, y1}, z1);
    }

    /** A block whose rectangles below and above may differ. */
    TestParts frustum(String name, double[] b, double z0, double[] t, double z1) {
        Vector3D b00 = at(b[0], b[2], z0);
        Vector3D b10 = at(b[1], b[2], z0);
        Vector3D b11 = at(b[1], b[3], z0);
        Vector3D b01 = at(b[0], b[3], z0);
        Vector3D t00 = at(t[0], t[2], z1);
        Vector3D t10 = at(t[1], t[2], z1);
        Vector3D t11 = at(t[1], t[3], z1);
        Vector3D t01 = at(t[0], t[3], z1);
        face(name + "/-z", b00, b01, b11, b10);
        face(name + "/+z", t00, t10, t11, t01);
        face(name + "/-y", b00, b10, t10, t00);
        face(name + "/+x", b10, b11, t11, t10);
        face(name + "/+y", b11, b01, t01, t11);
        face(name + "/-x", b01, b00, t00, t01);
        return this;
    }

    /**
     * A plate with rectangular openings, whose walls may run in steps.
     *
     * @param outer x0, x1, y0, y1
     * @param openings each x0, x1, y0, y1 at the top
     * @param steps from the top down: height and by how much the opening is wider there
     */
    TestParts plate(String name, double[] outer, List<double[]> openings, double[][] steps) {
        int last = steps.length - 1;
        rim(name + "/+z", outer, widened(openings, steps[0][1]), steps[0][0], true);
        rim(name + "/-z", outer, widened(openings, steps[last][1]), steps[last][0], false);
        for (int i = 0; i < openings.size(); i++) {
            for (int s = 0; s < last; s++) {
                double[] up = widened(openings, steps[s][1]).get(i);
                double[] low = widened(openings, steps[s + 1][1]).get(i);
                wall(name + "/opening[" + i + "]/step[" + s + "]", up, steps[s][0], low, steps[s + 1][0], true);
            }
        }
        wall(name + "/side", outer, steps[0][0], outer, steps[last][0], false);
        return this;
    }

    private void wall(String name, double[] up, double zUp, double[] low, double zLow, boolean inward) {
        Vector3D[] u = {at(up[0], up[2], zUp), at(up[1], up[2], zUp), at(up[1], up[3], zUp), at(up[0], up[3], zUp)};
        Vector3D[] l = {
            at(low[0], low[2], zLow), at(low[1], low[2], zLow), at(low[1], low[3], zLow), at(low[0], low[3], zLow)
        };
        String[] sides = {"/-y", "/+x", "/+y", "/-x"};
        for (int i = 0; i < 4; i++) {
            int j = (i + 1) % 4;
            if (inward) {
                face(name + sides[i], u[i], u[j], l[j], l[i]);
            } else {
                face(name + sides[i], l[i], l[j], u[j], u[i]);
            }
        }
    }

    private void rim(String name, double[] outer, List<double[]> openings, double z, boolean up) {
        List<Vector2D> corners = rectangle(outer);
        List<Vector2D> all = new ArrayList<>(corners);
        List<List<Vector2D>> holes = new ArrayList<>();
        for (double[] opening : openings) {
            holes.add(rectangle(opening));
            all.addAll(rectangle(opening));
        }
        builder.solid(name, Finish.ABSORBER, NOWHERE);
        for (int[] t : Triangulation.of(corners, holes)) {
            Vector3D a = at(all.get(t[0]).getX(), all.get(t[0]).getY(), z);
            Vector3D b = at(all.get(t[1]).getX(), all.get(t[1]).getY(), z);
            Vector3D c = at(all.get(t[2]).getX(), all.get(t[2]).getY(), z);
            builder.triangle(name, a, up ? b : c, up ? c : b);
        }
    }

    private static List<double[]> widened(List<double[]> openings, double by) {
        return openings.stream()
                .map(o -> new double[] {o[0] - by, o[1] + by, o[2] - by, o[3] + by})
                .toList();
    }

    private static List<Vector2D> rectangle(double[] r) {
        return List.of(
                Vector2D.of(r[0], r[2]), Vector2D.of(r[1], r[2]), Vector2D.of(r[1], r[3]), Vector2D.of(r[0], r[3]));
    }
}
