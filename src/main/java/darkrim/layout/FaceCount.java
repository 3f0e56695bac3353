package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Bounds the number of surfaces, so that a slip in a repeat does not fill the memory. */
final class FaceCount {
    /** Most surfaces of a layout. */
    private static final long MOST = 100_000;

    private FaceCount() {}

    /**
     * The parts up to the greatest number of surfaces; the first one beyond is reported, and it and the rest are left
     * out.
     */
    static List<Part> kept(Collection<Part> parts, Findings findings) {
        List<Part> kept = new ArrayList<>();
        long sum = 0;
        for (Part part : parts) {
            long copies = part.repeat()
                    .map(repeat -> (long) repeat.columns() * repeat.rows())
                    .orElse(1L);
            sum += copies * of(part.shape());
            if (sum > MOST) {
                findings.error(
                        "too-many",
                        part.place(),
                        "the layout has " + sum + " surfaces up to and including this part, expected at most " + MOST);
                return kept;
            }
            kept.add(part);
        }
        return kept;
    }

    private static long of(Shape shape) {
        if (shape instanceof DetectorsShape detectors) {
            long bonds =
                    detectors.bonds().map(found -> 5L * found.sides().size()).orElse(0L);
            return (long) detectors.columns() * detectors.rows() * (38 + bonds);
        }
        if (shape instanceof Shape.Plate plate) {
            long sum = 2 + sides(plate.outer());
            for (Shape.Openings group : plate.openings()) {
                long walls = group.knifeEdge().isPresent() ? 2 : 1;
                sum += (long) group.columns() * group.rows() * walls * sides(group.outline());
            }
            return sum;
        }
        if (shape instanceof Shape.Box) {
            return 16;
        }
        if (shape instanceof Shape.Block) {
            return 6;
        }
        if (shape instanceof TurnedShape turned) {
            return of(turned);
        }
        if (shape instanceof CutShape cut) {
            return of(cut);
        }
        if (shape instanceof BondWiresShape wires) {
            return 3L * wires.count();
        }
        if (shape instanceof Shape.Tube) {
            return 4;
        }
        if (shape instanceof Shape.Disc
                || shape instanceof Shape.Rectangle
                || shape instanceof Shape.SphereCap
                || shape instanceof Shape.Mesh) {
            return 2;
        }
        throw new IllegalStateException("nothing counts the faces of " + shape);
    }

    private static long of(TurnedShape shape) {
        if (shape instanceof VanesShape vanes) {
            return 5L * vanes.heights().size() + 4;
        }
        if (shape instanceof TurnedShape.Revolved revolved) {
            return revolved.sides().size();
        }
        return shape instanceof TurnedShape.LabyrinthJoint ? 16 * 4 : 6;
    }

    private static long of(CutShape shape) {
        if (shape instanceof CutShape.Extruded extruded) {
            return extruded.sides().size() + 2L;
        }
        if (shape instanceof CutShape.Honeycomb comb) {
            double pitch = comb.cell() + comb.wall();
            return (long) (comb.outer().area() / (0.75 * pitch * pitch)) + 6;
        }
        return 4L * ((CutShape.ColdStop) shape).arms() + 3;
    }

    private static long sides(Outline outline) {
        return outline instanceof Polygon polygon ? polygon.corners().size() : 1;
    }
}
