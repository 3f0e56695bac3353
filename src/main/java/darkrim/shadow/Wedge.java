package darkrim.shadow;

/**
 * Looks for a plane along an edge that has a shaft on one side and the edge, with what hangs on it, on the other.
 *
 * <p>Seen along the edge, the edge is a point and the shaft a convex figure. The figure appears from the point under a wedge of directions;
 * a plane exists if and only if the wedge is narrower than 180 degrees. Linear in the number of corners. What is found is only a
 * suggestion: {@link Shaft#separates} tries it.
 */
final class Wedge {
    private double rightX;
    private double rightY;
    private double leftX;
    private double leftY;
    private boolean empty = true;

    private Wedge() {}

    /**
     * Whether such a plane is found and holds.
     *
     * @param shaft the shaft
     * @param points coordinates
     * @param a where the first end of the edge begins in them
     * @param b the second end
     * @param third a corner that must lie on the side of the edge, or -1
     */
    static boolean between(Shaft shaft, double[] points, int a, int b, int third) {
        double dx = points[b] - points[a];
        double dy = points[b + 1] - points[a + 1];
        double dz = points[b + 2] - points[a + 2];
        double length = Math.sqrt(dx * dx + dy * dy + dz * dz);
        if (!(length > 0)) {
            return false;
        }
        dx /= length;
        dy /= length;
        dz /= length;
        // Two directions square to the edge.
        double ux;
        double uy;
        double uz;
        if (Math.abs(dx) <= Math.abs(dy) && Math.abs(dx) <= Math.abs(dz)) {
            double size = Math.sqrt(dy * dy + dz * dz);
            ux = 0;
            uy = dz / size;
            uz = -dy / size;
        } else if (Math.abs(dy) <= Math.abs(dz)) {
            double size = Math.sqrt(dx * dx + dz * dz);
            ux = -dz / size;
            uy = 0;
            uz = dx / size;
        } else {
            double size = Math.sqrt(dx * dx + dy * dy);
            ux = dy / size;
            uy = -dx / size;
            uz = 0;
        }
        double vx = dy * uz - dz * uy;
        double vy = dz * ux - dx * uz;
        double vz = dx * uy - dy * ux;
        Wedge wedge = new Wedge();
        double ox = points[a];
        double oy = points[a + 1];
        double oz = points[a + 2];
        if (third >= 0) {
            double px = ox - points[third];
            double py = oy - points[third + 1];
            double pz = oz - points[third + 2];
            wedge.add(ux * px + uy * py + uz * pz, vx * px + vy * py + vz * pz);
        }
        double radius = shaft.radius();
        double[] face = shaft.face();
        for (int i = 0; i < face.length; i += 3) {
            double px = face[i] - ox;
            double py = face[i + 1] - oy;
            double pz = face[i + 2] - oz;
            double x = ux * px + uy * py + uz * pz;
            double y = vx * px + vy * py + vz * pz;
            if (!(radius > 0 ? wedge.addDisc(x, y, radius) : wedge.add(x, y))) {
                return false;
            }
        }
        double[] pupil = shaft.pupil();
        for (int i = 0; i < pupil.length; i += 3) {
            double px = pupil[i] - ox;
            double py = pupil[i + 1] - oy;
            double pz = pupil[i + 2] - oz;
            if (!wedge.add(ux * px + uy * py + uz * pz, vx * px + vy * py + vz * pz)) {
                return false;
            }
        }
        double[] n = wedge.inward();
        double nx = -(n[0] * ux + n[1] * vx);
        double ny = -(n[0] * uy + n[1] * vy);
        double nz = -(n[0] * uz + n[1] * vz);
        double size = Math.sqrt(nx * nx + ny * ny + nz * nz);
        if (!(size > 0)) {
            return false;
        }
        if (third >= 0) {
            double[] three = {
                points[a], points[a + 1], points[a + 2],
                points[b], points[b + 1], points[b + 2],
                points[third], points[third + 1], points[third + 2]
            };
            return shaft.separates(nx, ny, nz, three, 3);
        }
        double[] two = {points[a], points[a + 1], points[a + 2], points[b], points[b + 1], points[b + 2]};
        return shaft.separates(nx, ny, nz, two, 2);
    }

    private boolean addDisc(double x, double y, double radius) {
        double squared = x * x + y * y;
        if (!(squared > radius * radius)) {
            return false;
        }
        double distance = Math.sqrt(squared);
        double sine = radius / distance;
        double cosine = Math.sqrt((1 - sine) * (1 + sine));
        return add(cosine * x - sine * y, cosine * y + sine * x) && add(cosine * x + sine * y, cosine * y - sine * x);
    }

    /** Widens the wedge by a direction; false once it is no longer narrower than 180 degrees. */
    private boolean add(double x, double y) {
        if (empty) {
            empty = false;
            rightX = x;
            rightY = y;
            leftX = x;
            leftY = y;
            return x != 0 || y != 0;
        }
        boolean beyondRight = rightX * y - rightY * x < 0;
        boolean beyondLeft = x * leftY - y * leftX < 0;
        if (beyondRight && beyondLeft) {
            return false;
        }
        if (beyondRight) {
            rightX = x;
            rightY = y;
        } else if (beyondLeft) {
            leftX = x;
            leftY = y;
        } else {
            // Within the wedge, or straight behind a wedge without width.
            return x * (rightX + leftX) + y * (rightY + leftY) > 0 || wide();
        }
        return rightX * leftY - rightY * leftX > 0;
    }

    private boolean wide() {
        return rightX * leftY - rightY * leftX > 0;
    }

    /** A direction that has a positive product with every direction of the wedge. */
    private double[] inward() {
        double right = Math.sqrt(rightX * rightX + rightY * rightY);
        double left = Math.sqrt(leftX * leftX + leftY * leftY);
        double rx = rightX / right;
        double ry = rightY / right;
        double lx = leftX / left;
        double ly = leftY / left;
        if (rx * lx + ry * ly > 0) {
            return new double[] {rx + lx, ry + ly};
        }
        // Wide: the sum of the two inward normals is the same direction with less cancellation.
        return new double[] {-ry + ly, rx - lx};
    }
}
