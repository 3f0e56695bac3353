package darkrim.trace;

/**
 * Where rays start that leave a facet: points of given weights, kept clear of the facet's edges and lifted a little to the side on which
 * the ray leaves, so that rounding cannot put a start behind its own facet or the next.
 *
 * <p>Rounding moves a start by up to 9 unit roundoffs of the bound, and a hit by up to 38. The lift is 64, so the start is surely on its
 * side; the clearance is 8192 (16 contacts), which keeps it on the right side of facets that meet its own at one degree or more. Then a
 * ray that starts on the inside of a closed solid does not escape. Not covered, and of no weight in a result: facets that meet more sharply
 * or are smaller than the clearance, and rays that rise above their facet by less than rounding turns it, 64 roundoffs of the bound over its
 * height. For a scene of 300 mm the lift is 2e-12 mm and the clearance 3e-10 mm. Derived in
 * docs/decisions/0001.
 *
 * <p>Immutable; safe for use by many threads.
 */
public final class StartPoints {
    private final double[] corners;
    private final double clearance;
    private final double lift;

    /**
     * @param corners nine coordinates a facet, mm, as given to the tree; not copied and not to be changed
     * @param tree the tree of the same facets
     */
    public StartPoints(double[] corners, FacetTree tree) {
        this.corners = corners;
        this.clearance = 16 * tree.contact();
        this.lift = tree.contact() / 8;
    }

    /** The distance kept from the edges of a facet, mm. */
    public double clearance() {
        return clearance;
    }

    /** The distance of a start from its facet, mm. */
    public double lift() {
        return lift;
    }

    /**
     * Places a start. The facet is shrunk about the centre of its inscribed circle until every point keeps clear of its edges, so equal
     * areas stay equal and an even sample stays even. A facet too small for that is left from the centre.
     *
     * @param facet the facet
     * @param weightA weight of its first corner, 0 to 1
     * @param weightB weight of its second corner; the third has the rest
     * @param front whether the ray leaves to the side of the right-hand normal
     * @param into receives the three coordinates, mm
     */
    public void place(int facet, double weightA, double weightB, boolean front, double[] into) {
        final double[] p = corners;
        int at = 9 * facet;
        double ax = p[at + 3] - p[at];
        double ay = p[at + 4] - p[at + 1];
        double az = p[at + 5] - p[at + 2];
        double bx = p[at + 6] - p[at + 3];
        double by = p[at + 7] - p[at + 4];
        double bz = p[at + 8] - p[at + 5];
        double cx = p[at] - p[at + 6];
        double cy = p[at + 1] - p[at + 7];
        double cz = p[at + 2] - p[at + 8];
        double nx = ay * bz - az * by;
        double ny = az * bx - ax * bz;
        double nz = ax * by - ay * bx;
        double doubleArea = Math.sqrt(nx * nx + ny * ny + nz * nz);
        double oppositeA = Math.sqrt(bx * bx + by * by + bz * bz);
        double oppositeB = Math.sqrt(cx * cx + cy * cy + cz * cz);
        double round = Math.sqrt(ax * ax + ay * ay + az * az) + oppositeA + oppositeB;
        // A point keeps d from the side opposite a corner when its weight is at least d x side / (2 area); 2 area =
        // radius x round.
        double share = Math.min(1, clearance * round / doubleArea);
        double a = share * (oppositeA / round) + (1 - share) * weightA;
        double b = share * (oppositeB / round) + (1 - share) * weightB;
        double c = 1 - a - b;
        double up = (front ? lift : -lift) / doubleArea;
        into[0] = a * p[at] + b * p[at + 3] + c * p[at + 6] + up * nx;
        into[1] = a * p[at + 1] + b * p[at + 4] + c * p[at + 7] + up * ny;
        into[2] = a * p[at + 2] + b * p[at + 5] + c * p[at + 8] + up * nz;
    }
}
