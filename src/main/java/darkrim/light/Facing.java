package darkrim.light;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What faces a receiver: a sender of which a corner lies in front of the receiver and in front of which a corner of the receiver lies. That is
 * necessary for light to go from one to the other, not sufficient.
 *
 * <p>Heights up to a sixteenth of the lift of starts count as none: light that leaves a face starts a lift above it, less rounding, and what
 * it meets lies higher still. So what only touches the plane of the receiver does not count, however rounding falls. Immutable.
 */
final class Facing {
    private static final int NO_PLANE = -1;

    private final Scene scene;
    private final FrontSearch planes;
    private final FrontSearch points;
    /** The plane in which all of the receiver lies, or {@link #NO_PLANE}: its rays pass over what lies in that plane. */
    private final int onlyPlane;

    /**
     * @param lift how far starts are lifted from a face, mm
     */
    Facing(Scene scene, Receiver receiver, double lift) {
        this.scene = scene;
        if (receiver instanceof Receiver.AtPoint at) {
            Vector3D point = at.position();
            double[] plane = new double[4];
            plane(
                    at.normal().getX(),
                    at.normal().getY(),
                    at.normal().getZ(),
                    at.normal().dot(point),
                    plane,
                    0);
            planes = new FrontSearch(plane, new double[4], 0);
            points = new FrontSearch(new double[] {point.getX(), point.getY(), point.getZ(), 1}, new double[4], 0);
            onlyPlane = NO_PLANE;
        } else {
            Surface surface = ((Receiver.OnSurface) receiver).surface();
            double least = lift / 16;
            double perBound = 1 / scene.bound();
            planes = new FrontSearch(planes(surface), new double[] {1, 1, 1, perBound}, least);
            points = new FrontSearch(corners(surface), new double[] {1, 1, 1, 1}, least);
            onlyPlane = onlyPlane(surface);
        }
    }

    /** Whether light may go from the side of a facet that a surface has to the receiver. */
    boolean mayGet(int facet, boolean back) {
        if (scene.plane(facet) == onlyPlane) {
            return false;
        }
        double side = back ? -1 : 1;
        double nx = side * scene.normal(facet, 0);
        double ny = side * scene.normal(facet, 1);
        double nz = side * scene.normal(facet, 2);
        double offset =
                nx * scene.corner(facet, 0, 0) + ny * scene.corner(facet, 0, 1) + nz * scene.corner(facet, 0, 2);
        return points.any(nx, ny, nz, -offset) && (isInFront(facet, 0) || isInFront(facet, 1) || isInFront(facet, 2));
    }

    private boolean isInFront(int facet, int corner) {
        return planes.any(
                scene.corner(facet, corner, 0), scene.corner(facet, corner, 1), scene.corner(facet, corner, 2), 1);
    }

    private double[] planes(Surface surface) {
        double[] all = new double[4 * surface.facetCount()];
        double side = surface.back() ? -1 : 1;
        for (int i = 0; i < surface.facetCount(); i++) {
            int f = surface.firstFacet() + i;
            double nx = side * scene.normal(f, 0);
            double ny = side * scene.normal(f, 1);
            double nz = side * scene.normal(f, 2);
            double offset = nx * scene.corner(f, 0, 0) + ny * scene.corner(f, 0, 1) + nz * scene.corner(f, 0, 2);
            plane(nx, ny, nz, offset, all, 4 * i);
        }
        return all;
    }

    private static void plane(double nx, double ny, double nz, double offset, double[] into, int at) {
        into[at] = nx;
        into[at + 1] = ny;
        into[at + 2] = nz;
        into[at + 3] = -offset;
    }

    private double[] corners(Surface surface) {
        double[] all = new double[12 * surface.facetCount()];
        for (int i = 0; i < 3 * surface.facetCount(); i++) {
            for (int axis = 0; axis < 3; axis++) {
                all[4 * i + axis] = scene.corner(surface.firstFacet() + i / 3, i % 3, axis);
            }
            all[4 * i + 3] = 1;
        }
        return all;
    }

    private int onlyPlane(Surface surface) {
        int plane = scene.plane(surface.firstFacet());
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            if (scene.plane(f) != plane) {
                return NO_PLANE;
            }
        }
        return plane;
    }
}
