package darkrim.shadow;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A triangle in space with the normal of the facet that it was cut from, and bounds of its distance to others.
 *
 * @param a first corner, mm
 * @param b second corner, mm
 * @param c third corner, mm
 * @param normal unit normal of the side that is meant
 */
record SpaceTriangle(Vector3D a, Vector3D b, Vector3D c, Vector3D normal) {
    Vector3D corner(int i) {
        return i == 0 ? a : i == 1 ? b : c;
    }

    double area() {
        double ux = b.getX() - a.getX();
        double uy = b.getY() - a.getY();
        double uz = b.getZ() - a.getZ();
        double vx = c.getX() - a.getX();
        double vy = c.getY() - a.getY();
        double vz = c.getZ() - a.getZ();
        double x = uy * vz - uz * vy;
        double y = uz * vx - ux * vz;
        double z = ux * vy - uy * vx;
        return Math.sqrt(x * x + y * y + z * z) / 2;
    }

    /** Length of the longest side, mm. */
    double size() {
        return Math.max(apart(a, b), Math.max(apart(b, c), apart(c, a)));
    }

    /** One of the two triangles that the longest side's middle makes. */
    SpaceTriangle half(int which) {
        double ab = apart(a, b);
        double bc = apart(b, c);
        double ca = apart(c, a);
        if (ab >= bc && ab >= ca) {
            Vector3D middle = middle(a, b);
            return which == 0 ? new SpaceTriangle(a, middle, c, normal) : new SpaceTriangle(middle, b, c, normal);
        }
        if (bc >= ca) {
            Vector3D middle = middle(b, c);
            return which == 0 ? new SpaceTriangle(b, middle, a, normal) : new SpaceTriangle(middle, c, a, normal);
        }
        Vector3D middle = middle(c, a);
        return which == 0 ? new SpaceTriangle(c, middle, b, normal) : new SpaceTriangle(middle, a, b, normal);
    }

    /** No two points of the two triangles are nearer than this, mm: the greater of the distances of their boxes and of their balls. */
    double distance(SpaceTriangle other) {
        Vector3D low = middle(a, b);
        Vector3D high = middle(other.a, other.b);
        double balls = apart(low, high) - reach(low) - other.reach(high);
        double x = gap(a.getX(), b.getX(), c.getX(), other.a.getX(), other.b.getX(), other.c.getX());
        double y = gap(a.getY(), b.getY(), c.getY(), other.a.getY(), other.b.getY(), other.c.getY());
        double z = gap(a.getZ(), b.getZ(), c.getZ(), other.a.getZ(), other.b.getZ(), other.c.getZ());
        double boxes = Math.sqrt(x * x + y * y + z * z);
        return Math.max(0, Math.max(balls, boxes) * (1 - 1e-12));
    }

    /** No point of the triangle is nearer to a point than this, mm. */
    double distanceFrom(Vector3D point) {
        Vector3D middle = middle(a, b);
        return Math.max(0, (apart(middle, point) - reach(middle)) * (1 - 1e-12));
    }

    /** The greatest height of a corner of another triangle above any corner of this one, along this one's normal, mm. */
    double greatestHeightOf(SpaceTriangle other) {
        double least = Math.min(along(a), Math.min(along(b), along(c)));
        double most = Math.max(along(other.a), Math.max(along(other.b), along(other.c)));
        double height = most - least;
        // Below rounding the two lie in one plane and exchange nothing.
        double scale = Math.abs(most) + Math.abs(least) + Math.abs(a.getX()) + Math.abs(a.getY()) + Math.abs(a.getZ());
        return height > 1e-13 * scale ? height : 0;
    }

    private double reach(Vector3D from) {
        return Math.max(apart(a, from), Math.max(apart(b, from), apart(c, from)));
    }

    private static double gap(double a, double b, double c, double d, double e, double f) {
        double low = Math.min(a, Math.min(b, c));
        double high = Math.max(a, Math.max(b, c));
        double otherLow = Math.min(d, Math.min(e, f));
        double otherHigh = Math.max(d, Math.max(e, f));
        return Math.max(0, Math.max(otherLow - high, low - otherHigh));
    }

    // Plain sums: Vector3D's compensated ones cost ten times as much, and the bounds leave room for rounding.
    private double along(Vector3D point) {
        return point.getX() * normal.getX() + point.getY() * normal.getY() + point.getZ() * normal.getZ();
    }

    private static double apart(Vector3D p, Vector3D q) {
        double x = p.getX() - q.getX();
        double y = p.getY() - q.getY();
        double z = p.getZ() - q.getZ();
        return Math.sqrt(x * x + y * y + z * z);
    }

    private static Vector3D middle(Vector3D p, Vector3D q) {
        return Vector3D.of((p.getX() + q.getX()) / 2, (p.getY() + q.getY()) / 2, (p.getZ() + q.getZ()) / 2);
    }
}
