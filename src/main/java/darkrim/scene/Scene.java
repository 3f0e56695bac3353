package darkrim.scene;

import darkrim.diagnostic.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What light meets: facets as flat arrays, the surfaces they belong to, and the beam. Immutable; safe for use by many threads.
 *
 * <p>Facet {@code f} has corners {@code 9 f .. 9 f + 8} of {@link #copyCorners()}. Its normal follows the right-hand rule and points out of
 * solid material. What lies behind it is either another surface (a sheet) or the inside of a solid.
 */
public final class Scene {
    /** Stands for the inside of solid material, where a facet has no surface on its back. */
    public static final int INSIDE = -1;

    private final double[] corners;
    private final double[] normals;
    private final double[] areas;
    private final int[] front;
    private final int[] back;
    private final int[] plane;
    private final int planeCount;
    private final double bound;
    private final List<Surface> surfaces;
    private final Beam beam;
    private final Beam covering;
    private final double referenceIrradiance;

    Scene(double[] corners, int[] front, int[] back, List<Surface> surfaces, Beam beam) {
        this.corners = corners;
        this.front = front;
        this.back = back;
        this.surfaces = List.copyOf(surfaces);
        this.beam = beam;
        this.covering = ApparentPupil.covering(beam, corners);
        this.referenceIrradiance = beam.referenceIrradiance();
        double reach = largest(corners);
        this.bound = Math.max(reach, Math.max(reach(beam), reach(covering)));
        FacetPlanes planes = FacetPlanes.of(corners, reach);
        this.normals = planes.normals();
        this.areas = planes.areas();
        this.plane = planes.planeOf();
        this.planeCount = planes.count();
    }

    private Scene(Scene other, Beam beam) {
        corners = other.corners;
        front = other.front;
        back = other.back;
        surfaces = other.surfaces;
        this.beam = beam;
        covering = ApparentPupil.covering(beam, corners);
        referenceIrradiance = beam.referenceIrradiance();
        bound = Math.max(other.bound, Math.max(reach(beam), reach(covering)));
        normals = other.normals;
        areas = other.areas;
        plane = other.plane;
        planeCount = other.planeCount;
    }

    private static double reach(Beam beam) {
        return beam.pupil().frame().origin().norm() + beam.pupil().outline().reach();
    }

    /** The same facets and surfaces in another light. */
    public Scene under(Beam other) {
        return new Scene(this, other);
    }

    /** Number of facets. */
    public int facetCount() {
        return front.length;
    }

    /** All corners, nine coordinates a facet, mm; not copied, for a scene may have millions: the caller must not change them. */
    public double[] corners() {
        return corners;
    }

    /** A copy of all corners, nine coordinates a facet, mm. */
    public double[] copyCorners() {
        return corners.clone();
    }

    /**
     * The same surfaces and beam with their corners elsewhere. Maps stay where they are.
     *
     * @param moved nine coordinates a facet, mm; not changed
     * @throws IllegalArgumentException if their number differs, or a facet has no area
     */
    public Scene withCorners(double[] moved) {
        if (moved.length != corners.length) {
            throw new IllegalArgumentException(moved.length + " coordinates instead of " + corners.length);
        }
        List<Surface> resized = new ArrayList<>();
        for (Surface surface : surfaces) {
            double area = 0;
            for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                double[] normal = FacetPlanes.doubleAreaNormal(moved, 9 * f);
                area += Math.sqrt(normal[0] * normal[0] + normal[1] * normal[1] + normal[2] * normal[2]) / 2;
            }
            resized.add(surface.withArea(area));
        }
        return new Scene(moved.clone(), front, back, resized, beam);
    }

    /** A copy of the plane numbers, one a facet. */
    public int[] copyPlanes() {
        return plane.clone();
    }

    /** Coordinate {@code axis} (0 to 2) of corner {@code corner} (0 to 2) of a facet, mm. */
    public double corner(int facet, int corner, int axis) {
        return corners[9 * facet + 3 * corner + axis];
    }

    /** A corner of a facet, mm. */
    public Vector3D corner(int facet, int corner) {
        int at = 9 * facet + 3 * corner;
        return Vector3D.of(corners[at], corners[at + 1], corners[at + 2]);
    }

    /** Component {@code axis} (0 to 2) of the unit normal of a facet. */
    public double normal(int facet, int axis) {
        return normals[3 * facet + axis];
    }

    /** The unit normal of a facet. */
    public Vector3D normal(int facet) {
        return Vector3D.of(normals[3 * facet], normals[3 * facet + 1], normals[3 * facet + 2]);
    }

    /** Area of a facet, mm2. */
    public double facetArea(int facet) {
        return areas[facet];
    }

    /** The surface on the side of a facet's normal. */
    public int frontSurface(int facet) {
        return front[facet];
    }

    /** The surface on the back of a facet, or {@link #INSIDE}. */
    public int backSurface(int facet) {
        return back[facet];
    }

    /**
     * The surface that a ray meets on a facet, or {@link #INSIDE} where it comes from inside solid material.
     *
     * @param facet the facet
     * @param dx direction of the ray, any length
     * @param dy likewise
     * @param dz likewise
     */
    public int surfaceMet(int facet, double dx, double dy, double dz) {
        double along = dx * normals[3 * facet] + dy * normals[3 * facet + 1] + dz * normals[3 * facet + 2];
        return along < 0 ? front[facet] : back[facet];
    }

    /** The number of the plane that a facet lies in; facets in one plane, facing either way, share it. */
    public int plane(int facet) {
        return plane[facet];
    }

    /** Number of different planes. */
    public int planeCount() {
        return planeCount;
    }

    /** Distance of the farthest corner of a facet from the origin, mm; 0 without facets. */
    public double reach() {
        double most = 0;
        for (int at = 0; at < corners.length; at += 3) {
            double x = corners[at];
            double y = corners[at + 1];
            double z = corners[at + 2];
            most = Math.max(most, x * x + y * y + z * z);
        }
        return Math.sqrt(most);
    }

    /** No coordinate of a facet, the pupil or the origin is larger than this in size, mm. */
    public double bound() {
        return bound;
    }

    /** All surfaces, by number. */
    public List<Surface> surfaces() {
        return surfaces;
    }

    /**
     * All surfaces and, after them, the window where there is one: what can reflect light on its way. The window has no facets, and its finish
     * says nothing.
     */
    public List<Surface> reflecting() {
        if (beam.window().isEmpty()) {
            return surfaces;
        }
        List<Surface> all = new ArrayList<>(surfaces);
        all.add(new Surface(
                surfaces.size(),
                beam.window().get().name(),
                Finish.ABSORBER,
                0,
                0,
                false,
                0,
                Optional.empty(),
                Place.IN_CODE));
        return List.copyOf(all);
    }

    /** The surface of a name, if there is one. */
    public Optional<Surface> surface(String name) {
        return surfaces.stream().filter(surface -> surface.name().equals(name)).findFirst();
    }

    /** The beam. */
    public Beam beam() {
        return beam;
    }

    /**
     * A beam of straight lines that holds every line which light takes below a window, and more: what is proved for all of its lines is proved
     * for the light. The beam itself where there is no window.
     */
    public Beam covering() {
        return covering;
    }

    /** {@link Beam#referenceIrradiance()} of the beam, sr. */
    public double referenceIrradiance() {
        return referenceIrradiance;
    }

    private static double largest(double[] corners) {
        double largest = 0;
        for (double coordinate : corners) {
            largest = Math.max(largest, Math.abs(coordinate));
        }
        return largest;
    }
}
