package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The faces of a surface, cut along the feet of all that stands on them. Pieces that
 * lie under a closed solid in contact are named apart: no light comes there.
 */
final class FacePieces {
    /** Cutting along feet stops here; what is left uncut can only lose a proof. */
    private static final int MOST_PIECES = 4096;

    private final List<Face> open = new ArrayList<>();
    private final List<Face> inContact = new ArrayList<>();
    private double contactArea;
    private final Scene scene;
    private final double[] corners;
    private final FacetEdges edges;
    private final Tolerance tolerance;
    /** The pupil: a solid that may hold some of it proves nothing by contact, for its light may come from inside. */
    private final List<FlatPiece> pupil;

    /**
     * @param corners nine coordinates a facet; not changed
     * @param stop whether to cut no more: what is left is open, uncut
     */
    FacePieces(
            Scene scene,
            FacetTree tree,
            double[] corners,
            FacetEdges edges,
            List<Face> faces,
            Tolerance tolerance,
            BooleanSupplier stop) {
        this.scene = scene;
        this.corners = corners;
        this.edges = edges;
        this.tolerance = tolerance;
        pupil = new PupilPieces(
                        scene.covering().pupil().outline(),
                        scene.covering().pupil().frame(),
                        tolerance)
                .all();
        for (Face face : faces) {
            if (stop.getAsBoolean()) {
                open.add(face);
            } else {
                cutAlongFeet(face, tree);
            }
        }
    }

    /** The pieces that light may reach. */
    List<Face> open() {
        return open;
    }

    /** All pieces, also those in contact: a surface that is moved may leave it. */
    List<Face> all() {
        List<Face> all = new ArrayList<>(open);
        all.addAll(inContact);
        return all;
    }

    /** Area in contact with other parts, mm2. */
    double contactArea() {
        return contactArea;
    }

    private void cutAlongFeet(Face face, FacetTree tree) {
        FlatPiece piece = face.piece();
        double[] low = new double[3];
        double[] high = new double[3];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        for (int i = 0; i < piece.space().length; i++) {
            low[i % 3] = Math.min(low[i % 3], piece.space()[i] - tolerance.gap());
            high[i % 3] = Math.max(high[i % 3], piece.space()[i] + tolerance.gap());
        }
        List<Integer> near = new ArrayList<>();
        tree.touching(low, high, near::add);
        List<FlatPiece> pieces = List.of(piece);
        List<Integer> contact = new ArrayList<>();
        for (int f : near) {
            double lowest = Double.POSITIVE_INFINITY;
            double highest = Double.NEGATIVE_INFINITY;
            for (int k = 0; k < 3; k++) {
                double height = Pair.height(piece.frame(), corners, 9 * f + 3 * k);
                lowest = Math.min(lowest, height);
                highest = Math.max(highest, height);
            }
            boolean flat = lowest >= -tolerance.flat() && highest <= tolerance.flat();
            if (flat && isContact(f, piece.frame())) {
                contact.add(f);
                for (int k = 0; k < 3; k++) {
                    pieces = cut(pieces, scene.corner(f, k), scene.corner(f, (k + 1) % 3));
                }
            } else if (!flat && lowest <= tolerance.flat() && highest >= -tolerance.flat()) {
                Vector3D[] foot = foot(f, piece.frame());
                if (foot != null) {
                    pieces = cut(pieces, foot[0], foot[1]);
                }
            }
        }
        for (FlatPiece part : pieces) {
            if (isUnderContact(part, contact)) {
                contactArea += part.area();
                inContact.add(new Face(part, face.plane()));
            } else {
                open.add(new Face(part, face.plane()));
            }
        }
    }

    private boolean isContact(int f, Frame frame) {
        return scene.backSurface(f) == Scene.INSIDE
                && scene.normal(f).dot(frame.normal()) < 0
                && edges.isClosed(edges.solid(f))
                && pupil.stream().noneMatch(part -> edges.boxTouches(edges.solid(f), part.space(), tolerance.gap()));
    }

    private boolean isUnderContact(FlatPiece piece, List<Integer> contact) {
        if (contact.isEmpty()) {
            return false;
        }
        PlanarCover cover = new PlanarCover(tolerance.gap());
        Frame frame = piece.frame();
        for (int f : contact) {
            for (int k = 0; k < 3; k++) {
                Vector3D a = scene.corner(f, k);
                Vector3D b = scene.corner(f, (k + 1) % 3);
                cover.add(frame.inU(a), frame.inV(a), frame.inU(b), frame.inV(b), f);
            }
        }
        return cover.covers(piece.plane()) && isMaterialAbove(piece, contact);
    }

    /** Whether the insides of the solids in contact cover a piece just above it: the sense of a facet alone may deceive. */
    private boolean isMaterialAbove(FlatPiece piece, List<Integer> contact) {
        Frame frame = piece.frame();
        Frame above = new Frame(
                frame.origin().add(frame.normal().multiply(2 * tolerance.flat())),
                frame.u(),
                frame.v(),
                frame.normal());
        PlanarCover cover = new PlanarCover(tolerance.gap());
        SliceCut slices = new SliceCut(corners, edges, tolerance);
        contact.stream().map(edges::solid).distinct().forEach(solid -> slices.addSection(above, solid, cover));
        return cover.covers(piece.plane());
    }

    /** Where a facet that stands on a plane or runs through it meets it: two ends, or null where that is no more than a point. */
    private Vector3D[] foot(int f, Frame frame) {
        List<Vector3D> ends = new ArrayList<>();
        double flat = tolerance.flat();
        for (int k = 0; k < 3; k++) {
            Vector3D a = scene.corner(f, k);
            Vector3D b = scene.corner(f, (k + 1) % 3);
            double from = frame.height(a);
            double to = frame.height(b);
            if (Math.abs(from) <= flat) {
                ends.add(a);
            }
            if ((from > flat && to < -flat) || (from < -flat && to > flat)) {
                ends.add(a.lerp(b, from / (from - to)));
            }
        }
        return ends.size() == 2 && ends.get(0).distance(ends.get(1)) > tolerance.gap()
                ? new Vector3D[] {ends.get(0), ends.get(1)}
                : null;
    }

    /** Cuts along a line those pieces that the stretch from a to b runs through. */
    private List<FlatPiece> cut(List<FlatPiece> pieces, Vector3D from, Vector3D to) {
        if (pieces.size() + open.size() >= MOST_PIECES) {
            return pieces;
        }
        List<FlatPiece> result = new ArrayList<>(pieces.size() + 1);
        for (FlatPiece piece : pieces) {
            double u = piece.frame().inU(from);
            double v = piece.frame().inV(from);
            double du = piece.frame().inU(to) - u;
            double dv = piece.frame().inV(to) - v;
            double length = Math.hypot(du, dv);
            if (!(length > 0) || !runsThrough(piece, u, v, du / length, dv / length, length)) {
                result.add(piece);
                continue;
            }
            double a = -dv / length;
            double b = du / length;
            double c = a * u + b * v;
            FlatPiece one = piece.clip(a, b, c);
            FlatPiece other = piece.clip(-a, -b, -c);
            if (one != null) {
                result.add(one);
            }
            if (other != null) {
                result.add(other);
            }
        }
        return result;
    }

    private boolean runsThrough(FlatPiece piece, double u, double v, double du, double dv, double length) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        double from = 0;
        double to = length;
        int n = piece.size();
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double across = du * (piece.v(i) - v) - dv * (piece.u(i) - u);
            least = Math.min(least, across);
            most = Math.max(most, across);
            double su = piece.u(i) - piece.u(j);
            double sv = piece.v(i) - piece.v(j);
            double height = su * (v - piece.v(j)) - sv * (u - piece.u(j));
            double slope = su * dv - sv * du;
            if (slope > 0) {
                from = Math.max(from, -height / slope);
            } else if (slope < 0) {
                to = Math.min(to, -height / slope);
            } else if (height < 0) {
                return false;
            }
        }
        return least < -tolerance.flat() && most > tolerance.flat() && to - from > tolerance.flat();
    }
}
