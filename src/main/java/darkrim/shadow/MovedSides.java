package darkrim.shadow;

import darkrim.assembly.Opening;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The sides of a convex opening, and the scene with some of them moved in the plane of the plate: all their cross-sections alike, land and
 * bevel together. Corners slide along the sides that stay, so that every face stays flat. Immutable.
 */
final class MovedSides {
    private final Scene scene;
    private final String plate;
    private final List<List<Vector3D>> loops;
    private final Vector3D normal;
    private final Vector3D[] outward;

    MovedSides(Scene scene, Opening opening) {
        this.scene = scene;
        plate = opening.name().substring(0, opening.name().lastIndexOf('/') + 1);
        loops = opening.loops();
        List<Vector3D> loop = opening.landNearPupil();
        int n = loop.size();
        Vector3D sum = Vector3D.ZERO;
        for (int i = 0; i < n; i++) {
            sum = sum.add(loop.get(i)
                    .subtract(loop.get(0))
                    .cross(loop.get((i + 1) % n).subtract(loop.get(0))));
        }
        normal = sum.normalize();
        outward = new Vector3D[n];
        for (int i = 0; i < n; i++) {
            outward[i] = along(loop, i).cross(normal).normalize();
        }
    }

    private static Vector3D along(List<Vector3D> loop, int side) {
        return loop.get((side + 1) % loop.size()).subtract(loop.get(side));
    }

    /** Number of sides. */
    int count() {
        return outward.length;
    }

    /** The cross-sections, from the pupil's side to the detector's. */
    List<List<Vector3D>> loops() {
        return loops;
    }

    /** Unit normal of the plate; the loops run counter-clockwise about it. */
    Vector3D normal() {
        return normal;
    }

    /** The direction in which a side faces away from the opening, unit length. */
    Vector3D outward(int side) {
        return outward[side];
    }

    /** Whether every corner turns the same way. */
    boolean isConvex() {
        boolean convex = true;
        for (int i = 0; i < count(); i++) {
            convex &= outward[i].cross(outward[(i + 1) % count()]).dot(normal) > 0;
        }
        return convex;
    }

    /**
     * The scene with sides moved.
     *
     * @param moved which sides
     * @param by how far outward, mm; negative inward
     * @return empty if the plate would run into itself or a face would turn over
     */
    Optional<Scene> scene(boolean[] moved, double by) {
        return corners(moved, by).map(scene::withCorners);
    }

    /** Whether sides can be moved as far. */
    boolean canMove(boolean[] moved, double by) {
        return corners(moved, by).isPresent();
    }

    private Optional<double[]> corners(boolean[] moved, double by) {
        Map<Corner, Vector3D> shifts = shifts(moved, by);
        double[] after = scene.copyCorners();
        Set<Surface> turned = new LinkedHashSet<>();
        for (int f = 0; f < scene.facetCount(); f++) {
            if (isOfPlate(f) && shift(f, shifts, after) && isTurned(after, f)) {
                turned.add(scene.surfaces().get(scene.frontSurface(f)));
            }
        }
        for (Surface surface : turned) {
            if (!FlatRemesh.replace(surface, scene, after)) {
                return Optional.empty();
            }
        }
        return Optional.of(after);
    }

    private boolean shift(int f, Map<Corner, Vector3D> shifts, double[] corners) {
        boolean changed = false;
        for (int k = 0; k < 3; k++) {
            Vector3D shift = shifts.get(Corner.of(scene.corner(f, k)));
            if (shift != null) {
                int at = 9 * f + 3 * k;
                corners[at] += shift.getX();
                corners[at + 1] += shift.getY();
                corners[at + 2] += shift.getZ();
                changed = true;
            }
        }
        return changed;
    }

    private boolean isTurned(double[] corners, int f) {
        return !(areaNormal(corners, f).dot(scene.normal(f)) > 0);
    }

    private boolean isOfPlate(int f) {
        return scene.surfaces().get(scene.frontSurface(f)).name().startsWith(plate);
    }

    private static Vector3D areaNormal(double[] corners, int f) {
        int at = 9 * f;
        Vector3D a = Vector3D.of(corners[at], corners[at + 1], corners[at + 2]);
        Vector3D b = Vector3D.of(corners[at + 3], corners[at + 4], corners[at + 5]);
        Vector3D c = Vector3D.of(corners[at + 6], corners[at + 7], corners[at + 8]);
        return b.subtract(a).cross(c.subtract(a));
    }

    private Map<Corner, Vector3D> shifts(boolean[] moved, double by) {
        Map<Corner, Vector3D> shifts = new HashMap<>();
        for (int i = 0; i < count(); i++) {
            Vector3D shift = shift(i, moved, by);
            for (List<Vector3D> loop : loops) {
                shifts.put(Corner.of(loop.get(i)), shift);
            }
        }
        return shifts;
    }

    /** Where the corner between two sides goes: each of them by its own distance along its own normal. */
    private Vector3D shift(int corner, boolean[] moved, double by) {
        int before = (corner + count() - 1) % count();
        double a = moved[before] ? by : 0;
        double b = moved[corner] ? by : 0;
        double cosine = outward[before].dot(outward[corner]);
        if (a == b) {
            return outward[before].add(outward[corner]).multiply(a / (1 + cosine));
        }
        double square = 1 - cosine * cosine;
        return outward[before]
                .multiply((a - cosine * b) / square)
                .add(outward[corner].multiply((b - cosine * a) / square));
    }

    /** A box around all that the walls of some sides sweep over when they are moved: least x, y, z, greatest x, y, z. */
    double[] swept(boolean[] moved, double by) {
        List<Vector3D> points = new ArrayList<>();
        for (int i = 0; i < count(); i++) {
            Vector3D shift = shift(i, moved, by);
            if (shift.norm() > 0) {
                for (List<Vector3D> loop : loops) {
                    points.add(loop.get(i));
                    points.add(loop.get(i).add(shift));
                }
            }
        }
        double[] box = new double[6];
        Arrays.fill(box, 0, 3, Double.POSITIVE_INFINITY);
        Arrays.fill(box, 3, 6, Double.NEGATIVE_INFINITY);
        for (Vector3D point : points) {
            double[] coordinates = point.toArray();
            for (int k = 0; k < 3; k++) {
                box[k] = Math.min(box[k], coordinates[k]);
                box[k + 3] = Math.max(box[k + 3], coordinates[k]);
            }
        }
        return box;
    }
}
