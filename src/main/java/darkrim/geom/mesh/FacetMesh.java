package darkrim.geom.mesh;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Triangular facets that share points. Immutable; lengths in mm; corners run counter-clockwise as seen from outside. */
public final class FacetMesh {
    private final double[] points;
    private final int[] corners;
    private final int[] groupOf;
    private final List<Group> groups;

    /**
     * What a file tells of some facets.
     *
     * @param name name of the object or group; empty where the file gives none
     * @param material name of the material; empty where the file gives none
     */
    public record Group(String name, String material) {
        /** Facets of which the file tells nothing. */
        public static final Group NAMELESS = new Group("", "");
    }

    /**
     * A mesh.
     *
     * @param points three finite coordinates a point, mm
     * @param corners three numbers of points a facet, counter-clockwise as seen from outside
     * @param groupOf number of the group, one a facet
     * @param groups all groups, by number
     */
    public static FacetMesh of(double[] points, int[] corners, int[] groupOf, List<Group> groups) {
        return new FacetMesh(points.clone(), corners.clone(), groupOf.clone(), groups);
    }

    /** Takes the arrays over: the caller must not change them. */
    private FacetMesh(double[] points, int[] corners, int[] groupOf, List<Group> groups) {
        this.points = points;
        this.corners = corners;
        this.groupOf = groupOf;
        this.groups = List.copyOf(groups);
    }

    /** Number of facets. */
    public int facetCount() {
        return groupOf.length;
    }

    /** Number of points. */
    public int pointCount() {
        return points.length / 3;
    }

    /** The number of the point at corner {@code k} (0 to 2) of a facet. */
    public int corner(int facet, int k) {
        return corners[3 * facet + k];
    }

    /** Coordinate {@code axis} (0 to 2) of a point, mm. */
    public double coordinate(int point, int axis) {
        return points[3 * point + axis];
    }

    /** A point, mm. */
    public Vector3D point(int point) {
        return Vector3D.of(points[3 * point], points[3 * point + 1], points[3 * point + 2]);
    }

    /** The point at corner {@code k} (0 to 2) of a facet, mm. */
    public Vector3D at(int facet, int k) {
        return point(corners[3 * facet + k]);
    }

    /** The number of the group of a facet. */
    public int groupOf(int facet) {
        return groupOf[facet];
    }

    /** All groups, by number. */
    public List<Group> groups() {
        return groups;
    }

    /** Twice the area of a facet times its unit normal, mm2. */
    public Vector3D doubledNormal(int facet) {
        Vector3D a = at(facet, 0);
        return at(facet, 1).subtract(a).cross(at(facet, 2).subtract(a));
    }

    /** Area of all facets, mm2. */
    public double area() {
        double sum = 0;
        for (int f = 0; f < facetCount(); f++) {
            sum += doubledNormal(f).norm() / 2;
        }
        return sum;
    }

    /** Enclosed volume, mm3, by the divergence theorem; meaningless for an open mesh. */
    public double volume() {
        double sum = 0;
        for (int f = 0; f < facetCount(); f++) {
            sum += at(f, 0).dot(at(f, 1).cross(at(f, 2))) / 6;
        }
        return sum;
    }

    /** Largest coordinate, in size, mm. */
    public double reach() {
        double largest = 0;
        for (double coordinate : points) {
            largest = Math.max(largest, Math.abs(coordinate));
        }
        return largest;
    }

    /** Longest side of the box along the axes around all points, mm. */
    public double extent() {
        double longest = 0;
        for (int axis = 0; axis < 3; axis++) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int p = axis; p < points.length; p += 3) {
                low = Math.min(low, points[p]);
                high = Math.max(high, points[p]);
            }
            longest = Math.max(longest, high - low);
        }
        return longest;
    }

    /** The same with every coordinate multiplied by a factor above 0. */
    public FacetMesh scaled(double factor) {
        double[] larger = new double[points.length];
        for (int i = 0; i < larger.length; i++) {
            // Adding 0 turns -0 into 0: corners that coincide are then equal bit for bit.
            larger[i] = points[i] * factor + 0.0;
        }
        return new FacetMesh(larger, corners, groupOf, groups);
    }

    /** The same without what the file tells of its groups. */
    public FacetMesh nameless() {
        return new FacetMesh(points, corners, new int[groupOf.length], List.of(Group.NAMELESS));
    }

    /** The same with the groups kept apart but without their names. */
    public FacetMesh withoutNames() {
        return new FacetMesh(
                points,
                corners,
                groupOf,
                groups.stream().map(group -> Group.NAMELESS).toList());
    }

    /** The same points with other facets. Takes the arrays over. */
    FacetMesh with(int[] otherCorners, int[] otherGroupOf) {
        return new FacetMesh(points, otherCorners, otherGroupOf, groups);
    }
}
