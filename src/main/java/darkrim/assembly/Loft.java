package darkrim.assembly;

import darkrim.layout.DetectorsShape.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The skin of a solid that grows downward through rectangles at falling heights: one flat face a side between each rectangle and the next,
 * mitred at the corners.
 *
 * <p>Where a side does not grow within a level step its face would have no area and is left out; the corners that it would have had stay in
 * the seam between the faces above and below, so that both use them.
 */
final class Loft {
    /** The sides in the order of the corners of {@link Rect#corners}: side i runs from corner i to the next. */
    static final List<Side> SIDES = List.of(Side.MINUS_Y, Side.PLUS_X, Side.PLUS_Y, Side.MINUS_X);

    private final Mesh mesh;
    private Rect rect;
    private double z;
    /** For each side the corners on the lower seam of what was added so far. */
    private final List<List<Vector3D>> seams = new ArrayList<>();

    /** Begins with a level face that looks up. */
    Loft(Mesh mesh, String face, Rect rect, double z) {
        this.mesh = mesh;
        this.rect = rect;
        this.z = z;
        List<Vector3D> corners = rect.corners(z);
        mesh.quad(face, corners.get(0), corners.get(1), corners.get(2), corners.get(3));
        for (int side = 0; side < 4; side++) {
            seams.add(List.of(corners.get(side), corners.get((side + 1) % 4)));
        }
    }

    /** The lowest rectangle so far. */
    Rect rect() {
        return rect;
    }

    /**
     * Goes on to a rectangle about the last one.
     *
     * @param nextRect the next rectangle, nowhere inside the last one
     * @param nextZ its height, not above the last, mm
     * @param faceOf name of the face of a side
     */
    void to(Rect nextRect, double nextZ, Function<Side, String> faceOf) {
        Rect next = nextRect.about(rect);
        List<Vector3D> corners = next.corners(nextZ);
        for (int side = 0; side < 4; side++) {
            Vector3D from = corners.get(side);
            Vector3D until = corners.get((side + 1) % 4);
            if (nextZ == z && !grows(side, next)) {
                seams.set(side, extended(from, seams.get(side), until));
            } else {
                List<Vector3D> seam = List.of(from, until);
                mesh.strip(faceOf.apply(SIDES.get(side)), seam, seams.get(side));
                seams.set(side, seam);
            }
        }
        rect = next;
        z = nextZ;
    }

    /**
     * Goes on to the foot of a fillet: sides that grow get a slope; on the others the wall goes straight down, and the ends of the
     * neighbours' slopes, which show there as triangles, belong to the slopes.
     *
     * @param foot the foot, nowhere inside the last rectangle
     * @param nextZ its height, below the last, mm
     * @param wallOf name of the wall of a side
     * @param slopeOf name of the slope of a side
     */
    void fillet(Rect foot, double nextZ, Function<Side, String> wallOf, Function<Side, String> slopeOf) {
        Rect next = foot.about(rect);
        List<Vector3D> corners = next.corners(nextZ);
        List<Vector3D> footOfWall = rect.corners(nextZ);
        for (int side = 0; side < 4; side++) {
            int following = (side + 1) % 4;
            List<Vector3D> upper = seams.get(side);
            if (grows(side, next)) {
                List<Vector3D> seam = List.of(corners.get(side), corners.get(following));
                mesh.strip(slopeOf.apply(SIDES.get(side)), seam, upper);
                seams.set(side, seam);
                continue;
            }
            Vector3D wallFrom = footOfWall.get(side);
            Vector3D wallUntil = footOfWall.get(following);
            mesh.strip(wallOf.apply(SIDES.get(side)), List.of(wallFrom, wallUntil), upper);
            if (!corners.get(side).equals(wallFrom)) {
                mesh.triangle(slopeOf.apply(SIDES.get((side + 3) % 4)), corners.get(side), wallFrom, upper.get(0));
            }
            if (!corners.get(following).equals(wallUntil)) {
                mesh.triangle(
                        slopeOf.apply(SIDES.get(following)),
                        wallUntil,
                        corners.get(following),
                        upper.get(upper.size() - 1));
            }
            seams.set(side, extended(corners.get(side), List.of(wallFrom, wallUntil), corners.get(following)));
        }
        rect = next;
        z = nextZ;
    }

    /**
     * Ends with a level face that looks down.
     *
     * @throws IllegalArgumentException if the last step did not go down
     */
    void close(String face) {
        if (seams.stream().anyMatch(seam -> seam.size() > 2)) {
            throw new IllegalArgumentException("its " + face + " lies level with the step above: give it a thickness");
        }
        List<Vector3D> corners = rect.corners(z);
        mesh.quad(face, corners.get(3), corners.get(2), corners.get(1), corners.get(0));
    }

    private boolean grows(int side, Rect next) {
        return switch (SIDES.get(side)) {
            case MINUS_X -> next.minX() != rect.minX();
            case PLUS_X -> next.maxX() != rect.maxX();
            case MINUS_Y -> next.minY() != rect.minY();
            case PLUS_Y -> next.maxY() != rect.maxY();
        };
    }

    /** The seam with a corner more at either end where that lies beyond it. */
    private static List<Vector3D> extended(Vector3D from, List<Vector3D> seam, Vector3D until) {
        List<Vector3D> longer = new ArrayList<>(seam);
        if (!from.equals(seam.get(0))) {
            longer.add(0, from);
        }
        if (!until.equals(seam.get(seam.size() - 1))) {
            longer.add(until);
        }
        return longer;
    }
}
