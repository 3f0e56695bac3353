package darkrim.study.vanes;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.scene.Surface;
import darkrim.shadow.LitAndSeen;
import darkrim.trace.FacetTree;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The proof that vanes as they are written do what they were placed for.
 *
 * <p>It knows nothing of the construction: the text is read as any layout, its facets are cut until every piece is proved unlit or unseen
 * ({@link LitAndSeen}). Detector and entrance are whole discs, so all azimuths of the light and all points of both are in it. A turn about the axis by
 * one side of the polygon maps the part on itself, so one of the sides stands for all; that the corners agree is tested.
 *
 * @param answers what is known about each surface, in the order of the part
 * @param sides number of sides of every circle
 * @param mismatch greatest distance between a corner and the one it is turned to, mm
 * @param walls the part of the surfaces that must not be lit and seen: the wall, without what lies below a first vane that was given
 */
public record VaneProof(List<FaceAnswer> answers, int sides, double mismatch, List<FaceAnswer> walls) {
    /** Far below the gap that counts as closed, far above rounding. */
    private static final double ALIKE = 1e-9;

    /** Copies the lists. */
    public VaneProof {
        answers = List.copyOf(answers);
        walls = List.copyOf(walls);
    }

    /**
     * Proves a layout that was written by {@link VaneText}.
     *
     * @throws UnusableInput if the vanes cannot be made as written
     */
    public static VaneProof of(VaneText text) throws UnusableInput {
        Findings findings = new Findings();
        LayoutReading reading = LayoutReader.read("vanes.yaml", text.layout().getBytes(StandardCharsets.UTF_8));
        findings.addAll(reading.findings());
        findings.throwIfErrors();
        Layout layout = reading.layout().orElseThrow();
        Assembly assembly = Assembly.of(layout, findings);
        findings.throwIfErrors();
        Scene scene = SceneFactory.of(layout, assembly);
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        VaneTask task = text.task();
        LitAndSeen proof =
                new LitAndSeen(scene, tree, entrance(task), task.offAxis().orElse(0), detector(task));
        String name = text.form().name() + "/";
        int sides = scene.surface(name + "top").orElseThrow().facetCount() / 2;
        List<FaceAnswer> answers = new ArrayList<>();
        List<FaceAnswer> walls = new ArrayList<>();
        double mismatch = 0;
        for (Surface surface : scene.surfaces()) {
            if (surface.name().startsWith(name)) {
                mismatch = Math.max(mismatch, mismatch(scene, surface, sides));
            }
        }
        for (Surface surface : scene.surfaces()) {
            if (surface.name().startsWith(name)) {
                FaceAnswer answer = answer(proof, surface, mismatch <= ALIKE ? sides : 1);
                answers.add(answer);
                boolean belowFirst = task.first().isPresent() && surface.name().equals(name + "inside/1");
                if (surface.name().startsWith(name + "inside/") && !belowFirst) {
                    walls.add(answer);
                }
            }
        }
        return new VaneProof(answers, sides, mismatch, walls);
    }

    private static Pupil entrance(VaneTask task) {
        Vector3D centre = Vector3D.of(0, 0, task.entranceHeight());
        return new Pupil(
                Ring.disc(task.entranceRadius()), Frame.of(centre, Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y));
    }

    private static Pupil detector(VaneTask task) {
        return new Pupil(
                Ring.disc(task.detectorRadius()), Frame.of(Vector3D.ZERO, Vector3D.Unit.PLUS_X, Vector3D.Unit.PLUS_Y));
    }

    /** Two facets a side, band after band: the first side of each band stands for the band. */
    private static FaceAnswer answer(LitAndSeen proof, Surface surface, int sides) {
        int band = sides == 1 ? surface.facetCount() : 2 * sides;
        int taken = sides == 1 ? surface.facetCount() : 2;
        LitAndSeen.Found worst = new LitAndSeen.Apart(0);
        for (int f = 0; f < surface.facetCount(); f += band) {
            LitAndSeen.Found found = proof.of(surface, surface.firstFacet() + f, taken);
            if (found instanceof LitAndSeen.Both) {
                return new FaceAnswer(surface.name(), surface.area(), found);
            }
            worst = worse(worst, found, sides);
        }
        return new FaceAnswer(surface.name(), surface.area(), worst);
    }

    private static LitAndSeen.Found worse(LitAndSeen.Found one, LitAndSeen.Found other, int sides) {
        if (one instanceof LitAndSeen.Apart first && other instanceof LitAndSeen.Apart second) {
            return new LitAndSeen.Apart(first.pieces() + second.pieces());
        }
        return new LitAndSeen.Open(open(one) + sides * open(other));
    }

    private static double open(LitAndSeen.Found found) {
        return found instanceof LitAndSeen.Open left ? left.area() : 0;
    }

    /** How far corners lie from the corners of the next side turned back by one side; a surface without bands of facets counts as infinite. */
    private static double mismatch(Scene scene, Surface surface, int sides) {
        int band = 2 * sides;
        if (surface.facetCount() % band != 0) {
            return Double.POSITIVE_INFINITY;
        }
        double cosine = StrictMath.cos(2 * Math.PI / sides);
        double sine = StrictMath.sin(2 * Math.PI / sides);
        double most = 0;
        for (int i = 0; i < surface.facetCount(); i++) {
            int start = surface.firstFacet() + i - i % band;
            int next = start + (i % band + 2) % band;
            for (int k = 0; k < 3; k++) {
                Vector3D corner = scene.corner(surface.firstFacet() + i, k);
                Vector3D turned = Vector3D.of(
                        cosine * corner.getX() - sine * corner.getY(),
                        sine * corner.getX() + cosine * corner.getY(),
                        corner.getZ());
                most = Math.max(most, turned.distance(scene.corner(next, k)));
            }
        }
        return most;
    }

    /** Whether every wall is proved, one at least: none of it is lit and seen. */
    public boolean holds() {
        return !walls.isEmpty() && walls.stream().allMatch(answer -> answer.found() instanceof LitAndSeen.Apart);
    }

    /** Whether a wall point is known that is lit and seen. */
    public boolean fails() {
        return walls.stream().anyMatch(answer -> answer.found() instanceof LitAndSeen.Both);
    }
}
