package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.geom.mesh.AnchoredFaces;
import darkrim.geom.mesh.FaceAnchor;
import darkrim.geom.mesh.MeshFlaw;
import darkrim.layout.Part;
import darkrim.layout.Shape;
import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What is wrong with a mesh, and with the names that the layout gives to its faces. Places are in the frame of the mesh. */
final class MeshFindings {
    /** A face that is farther from the place of its name has moved, mm: more than the last digits of files differ. */
    private static final double MOVED = 1e-3;

    /** Points of a mesher that differ by less are the same, mm. */
    private static final double ROUNDING = 1e-6;

    private MeshFindings() {}

    static void report(Part part, Shape.Mesh shape, MeshShape mesh, Findings findings) {
        List<String> mended = new ArrayList<>();
        for (MeshFlaw flaw : mesh.mended().flaws()) {
            if (isRounding(shape, flaw)) {
                continue;
            }
            if (flaw.kind().mended()) {
                mended.add(MeshFlawWords.of(flaw));
            } else if (flaw.kind() == MeshFlaw.Kind.OPEN_EDGE) {
                findings.warning(
                        "mesh-open",
                        part.place(),
                        head(part) + MeshFlawWords.of(flaw)
                                + ": light passes there, and the shell counts as a sheet with two sides, not as solid; expected a closed mesh");
            } else if (flaw.kind() != MeshFlaw.Kind.SLIVER) {
                findings.warning(
                        "mesh-flaw",
                        part.place(),
                        head(part) + MeshFlawWords.of(flaw) + ": expected it mended where the file was made");
            }
        }
        if (!mended.isEmpty()) {
            findings.warning(
                    "mesh-mended",
                    part.place(),
                    head(part) + "mended: " + String.join("; ", mended) + ": expected sizes that do not matter");
        }
        if (shape.chord().isEmpty() && !mesh.isFlat()) {
            findings.warning(
                    "mesh-chord",
                    part.place(),
                    head(part)
                            + "some faces are curved, and the layout does not say how far the facets lie from the true surface: the"
                            + " result leaves that out, expected 'chord' with the tolerance of the export");
        }
        mesh.matches().forEach(match -> report(part, shape, mesh, match, findings));
    }

    /** A mesher works out the points of an edge from either face: that they differ in their last digits is no flaw of the part. */
    private static boolean isRounding(Shape.Mesh shape, MeshFlaw flaw) {
        return shape.file().meshing().isPresent()
                && flaw.kind() == MeshFlaw.Kind.POINTS_MERGED
                && flaw.size() < ROUNDING;
    }

    private static void report(
            Part part, Shape.Mesh shape, MeshShape mesh, AnchoredFaces.Match match, Findings findings) {
        FaceAnchor anchor = match.anchor();
        String name = head(part) + "the face named '" + anchor.name() + "' ";
        if (match.face() >= 0) {
            if (match.distance() > MOVED) {
                findings.warning(
                        "mesh-face-moved",
                        part.place(),
                        name + "lies " + Wording.number(match.distance()) + " mm from the place of its name "
                                + place(anchor.at()) + ": make sure that it is the one that was meant");
            }
        } else if (match.other() >= 0) {
            findings.error(
                    "mesh-face-unclear",
                    part.place(),
                    name + "could be more than one, or has another name already: "
                            + mesh.faces().get(match.other()).name() + " is as near to " + place(anchor.at())
                            + ", expected a place well inside one face");
        } else {
            findings.error(
                    "mesh-face-missing",
                    part.place(),
                    name + "is not there: "
                            + (match.distance() < Double.POSITIVE_INFINITY
                                    ? "the nearest face that faces that way is " + Wording.number(match.distance())
                                            + " mm from " + place(anchor.at()) + ", expected it within "
                                            + Wording.number(shape.within()) + " mm"
                                    : "no face faces that way, expected the direction that it has"));
        }
    }

    private static String head(Part part) {
        return "mesh of part " + part.name() + ": ";
    }

    static String place(Vector3D at) {
        return "(" + coordinate(at.getX()) + ", " + coordinate(at.getY()) + ", " + coordinate(at.getZ()) + ") mm";
    }

    private static String coordinate(double value) {
        return Wording.number(Math.rint(1e4 * value) / 1e4 + 0.0);
    }
}
