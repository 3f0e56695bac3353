package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.junit.jupiter.api.Test;

/** Whole verdicts in awkward scenes against lines aimed at edges; witnesses checked without the tree; how much of what is dark is proved. */
class AttackSurfaceTest {
    private static final double GAP = 1e-6;

    @Test
    void noLineAimedAtAnEdgeContradictsAVerdict() {
        int scenes = Integer.getInteger("scenes", Boolean.getBoolean("long") ? 5000 : 50);
        long first = Long.getLong("seed", 500_001);
        List<String> found = new ArrayList<>();
        int[] counts = new int[3];
        long rays = 0;
        double narrowest = Double.POSITIVE_INFINITY;
        for (long seed = first; seed < first + scenes; seed++) {
            Scene scene = AttackScenes.scene(seed);
            FacetTree tree = TestParts.tree(scene);
            AttackRays shooting = new AttackRays(scene, new SplittableRandom(~seed));
            DarknessProof proof = new DarknessProof(scene, tree, new ProofSettings(0.02, 300, GAP));
            for (Surface surface : scene.surfaces()) {
                Darkness darkness = proof.of(surface);
                if (darkness instanceof Darkness.Dark) {
                    counts[0]++;
                    for (int i = 0; i < 300; i++) {
                        Optional<AttackRays.Line> clear = shooting.tryOne(surface);
                        if (clear.isPresent() && clear.get().clearance() > 0.6 * GAP) {
                            found.add("seed " + seed + " " + surface.name() + ": " + clear.get());
                        }
                    }
                } else if (darkness instanceof Darkness.Lit lit) {
                    counts[1]++;
                    double clearance = clearance(scene, shooting, surface, lit.witness());
                    narrowest = Math.min(narrowest, clearance);
                    if (!(clearance > 0)) {
                        found.add("seed " + seed + " " + surface.name() + ": no witness is " + lit.witness());
                    }
                } else {
                    counts[2]++;
                }
            }
            rays += shooting.rays();
        }
        System.out.printf(
                "SHOW scenes %d: dark %d, lit %d, undecided %d; rays %d; a witness passes things by %s mm or more%n",
                scenes, counts[0], counts[1], counts[2], rays, narrowest);
        assertThat(found).isEmpty();
        assertThat(counts[0]).isGreaterThan(scenes);
        assertThat(counts[1]).isGreaterThan(scenes / 4);
    }

    /** How far a witness stays from all in its way; negative if it is none. */
    private static double clearance(Scene scene, AttackRays shooting, Surface surface, WitnessRay witness) {
        Beam beam = scene.beam();
        Vector3D from = witness.from();
        Vector3D to = witness.to();
        Vector3D way = from.subtract(to);
        double u = beam.pupil().frame().inU(from);
        double v = beam.pupil().frame().inV(from);
        boolean starts = Math.abs(beam.pupil().frame().height(from)) < 1e-9
                && (beam.pupil().outline().contains(u, v)
                        || beam.pupil().outline().contains(u * (1 - 1e-9), v * (1 - 1e-9)));
        boolean inField = beam.fieldLimit()
                .map(l -> l.passes(to.getX(), to.getY(), to.getZ(), way.getX(), way.getY(), way.getZ()))
                .orElse(true);
        if (!starts || !inField || way.dot(beam.pupil().frame().normal()) >= 0) {
            return -1;
        }
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            double facing = way.dot(scene.normal(f)) * (surface.back() ? -1 : 1);
            double height = scene.normal(f).dot(to.subtract(scene.corner(f, 0)));
            if (facing > 0 && Math.abs(height) < 1e-9 && shooting.isWithin(f, to, 1e-9)) {
                return shooting.clearance(from, to, f, surface.back());
            }
        }
        return -1;
    }

    @Test
    void whatIsDarkByAMicrometreIsProved() {
        Pupil disc = TestParts.pupilAt(200, Ring.disc(20));
        for (double margin : new double[] {0.001, 0.01, 0.1}) {
            int proved = 0;
            long pairs = 0;
            SplittableRandom random = new SplittableRandom(7);
            int tries = 40;
            for (int i = 0; i < tries; i++) {
                double h = 1 + 60 * random.nextDouble();
                QuaternionRotation turn =
                        QuaternionRotation.fromAxisAngle(Vector3D.Unit.PLUS_Z, 7 * random.nextDouble());
                // The shadow of a knife edge at x = 0, height h, begins at x = 20 h / (200 - h); the edge may be made
                // of two plates.
                double start = 20 * h / (200 - h) + margin;
                TestParts parts = new TestParts().placed(turn::apply);
                if (i % 2 == 0) {
                    parts.block("knife", 0, 90, -90, 90, h, h + 1);
                } else {
                    parts.block("one", 0, 90, -90, 3, h, h + 1).block("two", 0, 91, 3, 90, h, h + 0.5);
                }
                parts.sheet("face", start, start + 5, -10, 10, 0);
                Scene scene = parts.build(Beam.of(disc));
                Darkness darkness = TestParts.prove(scene, "face");
                proved += darkness instanceof Darkness.Dark ? 1 : 0;
                pairs += darkness.effort().pairs();
                assertThat(darkness).isNotInstanceOf(Darkness.Lit.class);
            }
            System.out.printf(
                    "SHOW dark by %s mm: %d of %d proved, %d pairs each%n", margin, proved, tries, pairs / tries);
            assertThat(proved).isEqualTo(tries);
        }
    }
}
