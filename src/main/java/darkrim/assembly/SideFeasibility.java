package darkrim.assembly;

import darkrim.layout.DetectorsShape.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * One side of an opening above a die.
 *
 * @param side the side of the die
 * @param overspill how far direct light lands beyond the last active pixel in the plane of the die, placement error included, mm
 * @param edge which edge of the opening limits that light
 * @param edgeHeight height of that edge above the plane of the die, mm: h of the rule
 * @param fNumber distance of the pupil over its width along this axis: N of the rule
 * @param room from the last active pixel to the edge of the die, the first surface that must stay dark, mm: d of the rule
 * @param ruleLimit N (d - 2t), mm
 */
public record SideFeasibility(
        Side side, double overspill, Edge edge, double edgeHeight, double fNumber, double room, double ruleLimit) {
    /** An edge of an opening, from the pupil's side to the detector's. */
    public enum Edge {
        /** Where the opening meets the face of the plate nearer the pupil. */
        PUPIL_FACE("the face nearer the pupil"),
        /** The end of the land nearer the pupil. */
        LAND_NEAR_PUPIL("the land's edge nearer the pupil"),
        /** The end of the land nearer the detector. */
        LAND_NEAR_DETECTOR("the land's edge nearer the detector"),
        /** Where the opening meets the face of the plate nearer the detector. */
        DETECTOR_FACE("the face nearer the detector");

        private final String words;

        Edge(String words) {
            this.words = words;
        }

        /** The edge in words. */
        public String words() {
            return words;
        }

        private List<Vector3D> of(Opening opening) {
            return switch (this) {
                case PUPIL_FACE -> opening.pupilFace();
                case LAND_NEAR_PUPIL -> opening.landNearPupil();
                case LAND_NEAR_DETECTOR -> opening.landNearDetector();
                case DETECTOR_FACE -> opening.detectorFace();
            };
        }
    }

    /** An edge, its height above the plane of the die and how far out it lies at most, mm. */
    private record Stop(Edge edge, double height, double at) {}

    /**
     * Follows the outermost light past each edge: a point of the pupil at X, height Z, and an edge at e, height h, meet the plane of the
     * die at X + (e - X) Z / (Z - h). Of the edges the one that lets least pass counts, of the points of the pupil the one that reaches
     * farthest.
     */
    static SideFeasibility of(Opening opening, Die die, List<Vector3D> pupil, Side side, double placementError) {
        ToDoubleFunction<Vector3D> outward = outward(side);
        double dieZ = die.active().get(0).getZ();
        double lastPixel = most(die.active(), outward);
        List<Stop> stops = new ArrayList<>();
        for (Edge edge : Edge.values()) {
            List<Vector3D> loop = edge.of(opening);
            stops.add(new Stop(edge, loop.get(0).getZ() - dieZ, most(loop, outward) + placementError));
        }
        double reach = Double.NEGATIVE_INFINITY;
        Edge limiting = Edge.LAND_NEAR_DETECTOR;
        for (Vector3D point : pupil) {
            double distance = point.getZ() - dieZ;
            double from = outward.applyAsDouble(point);
            double nearest = Double.POSITIVE_INFINITY;
            Edge nearestEdge = Edge.LAND_NEAR_DETECTOR;
            for (Stop stop : stops) {
                double lands = from + (stop.at - from) * distance / (distance - stop.height);
                // Edges that coincide, as those of a straight wall, are named by the land.
                boolean tighter = lands < nearest || (lands == nearest && stop.edge != Edge.DETECTOR_FACE);
                if (tighter) {
                    nearest = lands;
                    nearestEdge = stop.edge;
                }
            }
            if (nearest > reach) {
                reach = nearest;
                limiting = nearestEdge;
            }
        }
        double room = most(die.outline(), outward) - lastPixel;
        double width = most(pupil, outward) + most(pupil, outward(opposite(side)));
        double middle = pupil.stream().mapToDouble(Vector3D::getZ).average().orElseThrow() - dieZ;
        double fNumber = middle / width;
        double edgeHeight = limiting.of(opening).get(0).getZ() - dieZ;
        return new SideFeasibility(
                side, reach - lastPixel, limiting, edgeHeight, fNumber, room, fNumber * (room - 2 * placementError));
    }

    /** Whether no direct light passes the edge of the die. */
    public boolean holds() {
        return overspill <= room;
    }

    /** Whether the rule for a telecentric beam holds: h &lt;= N (d - 2t). */
    public boolean ruleHolds() {
        return edgeHeight <= ruleLimit;
    }

    private static double most(List<Vector3D> points, ToDoubleFunction<Vector3D> outward) {
        return points.stream().mapToDouble(outward).max().orElseThrow();
    }

    private static ToDoubleFunction<Vector3D> outward(Side side) {
        return switch (side) {
            case MINUS_X -> point -> -point.getX();
            case PLUS_X -> Vector3D::getX;
            case MINUS_Y -> point -> -point.getY();
            case PLUS_Y -> Vector3D::getY;
        };
    }

    private static Side opposite(Side side) {
        return switch (side) {
            case MINUS_X -> Side.PLUS_X;
            case PLUS_X -> Side.MINUS_X;
            case MINUS_Y -> Side.PLUS_Y;
            case PLUS_Y -> Side.MINUS_Y;
        };
    }
}
