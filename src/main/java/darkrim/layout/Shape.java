package darkrim.layout;

import darkrim.geom.Outline;
import darkrim.geom.mesh.FaceAnchor;
import darkrim.layout.mesh.MeshFile;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** What a part is, in its own frame before it is placed. Lengths in mm, angles in degrees. */
public sealed interface Shape
        permits DetectorsShape,
                Shape.Plate,
                Shape.Box,
                Shape.Tube,
                Shape.Block,
                Shape.Disc,
                Shape.Rectangle,
                Shape.SphereCap,
                Shape.Mesh,
                TurnedShape,
                CutShape,
                BondWiresShape {

    /**
     * A plate parallel to the focal plane, with openings.
     *
     * @param outer its outline
     * @param height height of its underside (the side of the detector) above the part's origin
     * @param thickness thickness
     * @param openings its openings, in the order of the file
     */
    record Plate(Outline outer, double height, double thickness, List<Openings> openings) implements Shape {
        /** Copies the list. */
        public Plate {
            openings = List.copyOf(openings);
        }
    }

    /**
     * Equal openings of a plate in a grid. Opening (i, j), counted from 1, is named {@code name[i,j]}, or {@code name} where there is one.
     *
     * @param name name of the group; {@code opening} unless stated
     * @param outline outline of the smallest cross-section, about its own centre
     * @param columns number along x
     * @param rows number along y
     * @param pitchX step along x
     * @param pitchY step along y
     * @param centre centre of the grid
     * @param knifeEdge the edge; absent for a straight or undercut wall
     * @param undercut the step; absent for a straight or bevelled wall
     */
    record Openings(
            String name,
            Outline outline,
            int columns,
            int rows,
            double pitchX,
            double pitchY,
            Vector2D centre,
            Optional<KnifeEdge> knifeEdge,
            Optional<Undercut> undercut) {
        /** Openings without an undercut. */
        public Openings(
                String name,
                Outline outline,
                int columns,
                int rows,
                double pitchX,
                double pitchY,
                Vector2D centre,
                Optional<KnifeEdge> knifeEdge) {
            this(name, outline, columns, rows, pitchX, pitchY, centre, knifeEdge, Optional.empty());
        }
    }

    /**
     * A straight land at the smallest cross-section and a bevel that widens away from it.
     *
     * @param land height of the straight land, less than the thickness of the plate
     * @param bevel angle between the bevel and the axis of the opening, degrees
     * @param toward on which side of the plate the edge is
     */
    record KnifeEdge(double land, double bevel, Toward toward) {}

    /**
     * A straight land at the smallest cross-section and a level step behind which the wall stands back.
     *
     * @param land height of the land, less than the thickness of the plate
     * @param depth how far the wall stands back
     * @param toward on which side of the plate the land is
     */
    record Undercut(double land, double depth, Toward toward) {}

    /** A side of a plate. */
    enum Toward {
        /** The side of the pupil, +z. */
        PUPIL,
        /** The side of the detector, -z. */
        DETECTOR
    }

    /**
     * Four walls about the z axis, open above and below.
     *
     * @param width inner width along x at the base
     * @param depth inner width along y at the base
     * @param base height of the base above the part's origin
     * @param height height of the walls
     * @param tilt lean of the inner wall, degrees; positive widens toward +z
     * @param thickness thickness of the walls, measured level
     */
    record Box(double width, double depth, double base, double height, double tilt, double thickness)
            implements Shape {}

    /**
     * A round tube about the z axis, open above and below.
     *
     * @param innerRadius inner radius
     * @param outerRadius outer radius
     * @param base height of the base above the part's origin
     * @param height height
     */
    record Tube(double innerRadius, double outerRadius, double base, double height) implements Shape {}

    /**
     * A block; its base is centred on the part's origin.
     *
     * @param width size along x
     * @param depth size along y
     * @param height size along z
     */
    record Block(double width, double depth, double height) implements Shape {}

    /**
     * A thin disc that faces +z.
     *
     * @param radius outer radius
     * @param hole radius of its hole, 0 for none
     */
    record Disc(double radius, double hole) implements Shape {}

    /**
     * A thin rectangle about the origin that faces +z.
     *
     * @param width size along x
     * @param depth size along y
     */
    record Rectangle(double width, double depth) implements Shape {}

    /**
     * A thin cap of a sphere about the origin; its middle lies on +z.
     *
     * @param radius radius of the sphere
     * @param halfAngle half angle of the cap as seen from the centre, degrees, up to 180
     */
    record SphereCap(double radius, double halfAngle) implements Shape {}

    /**
     * Facets from a file.
     *
     * @param file the file
     * @param unit size of the unit of its coordinates, mm
     * @param crease facets that meet at more than this belong to different faces, degrees
     * @param chord how far facets may lie from the curved surface they stand for; absent where it is not stated
     * @param names names of faces
     * @param within how far a face may have moved from the place of its name
     * @param finishOf finish by name of the material in the file; materials that are not in it have the finish of the part
     * @param leastGap narrower gaps to other parts are named, mm; absent where not asked for
     */
    record Mesh(
            MeshFile file,
            double unit,
            double crease,
            Optional<Double> chord,
            List<FaceAnchor> names,
            double within,
            Map<String, String> finishOf,
            Optional<Double> leastGap)
            implements Shape {
        /** Copies the collections. */
        public Mesh {
            names = List.copyOf(names);
            finishOf = Map.copyOf(finishOf);
        }
    }
}
