package darkrim.study;

import darkrim.assembly.Assembly;
import darkrim.assembly.MeshShape;
import darkrim.assembly.PartName;
import darkrim.diagnostic.Findings;
import darkrim.geom.mesh.MeshFace;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import darkrim.layout.Requirement;
import darkrim.layout.Shape;
import darkrim.layout.form.Wording;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.verdict.Evidence;
import darkrim.verdict.Judgement;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What a proof of darkness on facets is worth for the curved surfaces that they stand for.
 *
 * <p>Where a true edge lies within a distance t of the facets' edge, at height e under the plane of the pupil, the light behind it at height h
 * reaches at most t h / e farther, by similar triangles. So a surface whose clearance is more than that is dark behind the true surface as well;
 * one that itself is of such facets needs t more. A curved face that all but faces the pupil may be lit where its facets face away: facets
 * within the angle between neighbours of that prove nothing.
 */
public final class ChordDoubt {
    private final Scene scene;
    private final List<Curved> parts;
    private final double highest;

    /** A part of facets that stand for curved surfaces. */
    private record Curved(Part part, MeshShape mesh, double tolerance, double angle) {
        private boolean has(Surface surface) {
            return PartName.of(surface.name()).equals(part.name());
        }

        /** Whether the surface is one of its curved faces. */
        private boolean isCurved(Surface surface) {
            String path = surface.name().substring(surface.name().indexOf('/') + 1);
            for (MeshFace face : mesh.faces()) {
                if (path.equals(face.name()) || path.equals(face.name() + "/back")) {
                    return !face.size().flat();
                }
            }
            return true;
        }
    }

    private ChordDoubt(Scene scene, List<Curved> parts) {
        this.scene = scene;
        this.parts = List.copyOf(parts);
        double least = Double.POSITIVE_INFINITY;
        for (Surface surface : scene.surfaces()) {
            if (parts.stream().anyMatch(part -> part.has(surface))) {
                least = Math.min(least, depths(surface)[0]);
            }
        }
        this.highest = Math.max(0, least);
    }

    /** The doubt; empty where no part is of facets that stand for curved surfaces, or nothing is said of how far they lie from them. */
    public static Optional<ChordDoubt> of(Layout layout, Assembly assembly, Scene scene) {
        List<Curved> parts = new ArrayList<>();
        for (Part part : layout.parts()) {
            MeshShape mesh = assembly.meshes().get(part.name());
            if (mesh != null && part.shape() instanceof Shape.Mesh shape && mesh.chordError(shape) > 0) {
                double angle = shape.file().meshing().map(made -> made.angle()).orElse(shape.crease());
                parts.add(new Curved(part, mesh, mesh.chordError(shape), angle));
            }
        }
        return parts.isEmpty() ? Optional.empty() : Optional.of(new ChordDoubt(scene, parts));
    }

    /** The judgement with proofs taken back that the true surfaces need not bear out; each requirement that loses one has a warning. */
    public Judgement applied(Judgement judgement, Findings findings) {
        warn(findings);
        Judgement doubted = judgement.doubting(this::isDoubtful);
        for (int i = 0; i < doubted.requirements().size(); i++) {
            RequirementResult after = doubted.requirements().get(i);
            if (!after.outcomes().equals(judgement.requirements().get(i).outcomes())) {
                report(after, findings);
            }
        }
        return doubted;
    }

    /** Says of each such part how far its facets lie from the surfaces that they stand for, and what that means for a check. */
    public void warn(Findings findings) {
        warn(
                findings,
                "darkness counts as proved only with more clearance than that costs; margins,"
                        + " the pupil seen, reflected light, and direct light within a limit are judged for the facets; expected finer facets where that is not enough");
    }

    /** The same for studies that take nothing for proved then. */
    public void warnOfNoProofs(Findings findings) {
        warn(
                findings,
                "nothing counts as proved dark here, whatever the clearance; samples hold for the facets; expected finer facets where those are not close enough");
    }

    private void warn(Findings findings, String meaning) {
        for (Curved curved : parts) {
            findings.warning(
                    "mesh-tolerance",
                    curved.part.place(),
                    "facets of part " + curved.part.name() + " lie up to " + Wording.number(curved.tolerance)
                            + " mm from its curved surfaces: " + meaning);
        }
    }

    private void report(RequirementResult result, Findings findings) {
        List<Outcome> doubted =
                result.outcomes().stream().filter(Outcome::isDarknessInDoubt).toList();
        Outcome worst = doubted.stream()
                .filter(outcome -> outcome.evidence()
                        .margin()
                        .filter(margin -> !margin.atLeast())
                        .isPresent())
                .findFirst()
                .orElse(doubted.get(0));
        Requirement requirement = result.requirement();
        double needed = needed(worst.surface());
        String has = worst.evidence()
                .margin()
                .map(LightMargin::millimetres)
                .map(margin -> "by " + Wording.number(margin) + " mm")
                .orElse("by a clearance that was not measured");
        findings.warning(
                "within-tolerance",
                requirement.place(),
                "requirement " + requirement.name()
                        + (result.verdict() == Verdict.FAIL
                                ? " fails, and there is a doubt besides: "
                                : " is not decided: ")
                        + worst.surface().name()
                        + " is dark behind the facets " + has + ", expected more than "
                        + (needed < Double.POSITIVE_INFINITY ? Wording.number(needed) + " mm" : "any clearance")
                        + ", which the distance of facets from curved surfaces may cost"
                        + (isGrazing(worst.surface())
                                ? "; it is curved and some of it all but faces the pupil (facets that turn by less, with a smaller chord_angle or crease, may help)"
                                : ""));
    }

    private boolean isDoubtful(Surface surface, Evidence.ProvedDark dark) {
        double known = dark.clearance().map(LightMargin::millimetres).orElse(0.0);
        return !(known > needed(surface)) || isGrazing(surface);
    }

    /** The clearance that a surface must have, mm. */
    private double needed(Surface surface) {
        double tolerance = parts.stream().mapToDouble(Curved::tolerance).max().orElse(0);
        double own = parts.stream()
                .filter(part -> part.has(surface))
                .mapToDouble(Curved::tolerance)
                .max()
                .orElse(0);
        return highest > 0 ? own + tolerance * Math.max(1, depths(surface)[1] / highest) : Double.POSITIVE_INFINITY;
    }

    /** Least and greatest distance of the corners of a surface below the plane of the pupil, mm. */
    private double[] depths(Surface surface) {
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            for (int k = 0; k < 3; k++) {
                double depth = scene.covering().pupil().frame().height(scene.corner(f, k));
                least = Math.min(least, depth);
                greatest = Math.max(greatest, depth);
            }
        }
        return new double[] {least, greatest};
    }

    /** Whether the surface is curved, and a facet of it faces away from the pupil, or not quite, by less than its neighbours are turned. */
    private boolean isGrazing(Surface surface) {
        for (Curved curved : parts) {
            if (curved.has(surface) && curved.isCurved(surface)) {
                double sine = StrictMath.sin(Math.toRadians(Math.min(90, curved.angle)));
                for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                    if (isGrazing(f, surface.back(), sine)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private boolean isGrazing(int facet, boolean back, double sine) {
        Pupil pupil = scene.covering().pupil();
        double reach = pupil.outline().reach();
        Vector3D normal = back ? scene.normal(facet).negate() : scene.normal(facet);
        for (int k = 0; k < 3; k++) {
            Vector3D toward = pupil.frame().origin().subtract(scene.corner(facet, k));
            double rise = normal.dot(toward);
            boolean facesAway = rise + reach < -sine * (toward.norm() + reach);
            boolean facesIt = rise - reach > 0;
            if (!facesAway && !facesIt) {
                return true;
            }
        }
        return false;
    }
}
