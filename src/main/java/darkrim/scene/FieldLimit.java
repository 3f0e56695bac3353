package darkrim.scene;

import darkrim.geom.Frame;
import darkrim.geom.Outline;

/**
 * A limit of the field: light travels only on lines that cross a plane inside an outline. The plane may lie anywhere, also at or behind
 * the surface that is lit: it then stands for the edge of the field that the optics fill.
 *
 * @param outline its shape in the frame's u and v, mm
 * @param frame its plane
 */
public record FieldLimit(Outline outline, Frame frame) {
    /**
     * Whether a line may carry light.
     *
     * @param x a point of the line, mm
     * @param y likewise
     * @param z likewise
     * @param dx direction of the line, any length
     * @param dy likewise
     * @param dz likewise
     * @return whether the line crosses the plane inside the outline; false for a line parallel to the plane
     */
    public boolean passes(double x, double y, double z, double dx, double dy, double dz) {
        double nx = frame.normal().getX();
        double ny = frame.normal().getY();
        double nz = frame.normal().getZ();
        double along = nx * dx + ny * dy + nz * dz;
        if (along == 0) {
            return false;
        }
        double rx = x - frame.origin().getX();
        double ry = y - frame.origin().getY();
        double rz = z - frame.origin().getZ();
        double t = -(nx * rx + ny * ry + nz * rz) / along;
        double qx = rx + t * dx;
        double qy = ry + t * dy;
        double qz = rz + t * dz;
        double u =
                qx * frame.u().getX() + qy * frame.u().getY() + qz * frame.u().getZ();
        double v =
                qx * frame.v().getX() + qy * frame.v().getY() + qz * frame.v().getZ();
        return outline.contains(u, v);
    }
}
