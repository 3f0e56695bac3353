package darkrim.study.live;

import darkrim.scene.Surface;
import darkrim.study.ProvenLight;
import darkrim.verdict.Evidence;
import darkrim.verdict.Proofs;
import darkrim.verdict.Prover;
import java.util.Set;

/** The proofs of a whole check, which takes over what quick proofs have decided: with more patience they would say the same. */
final class PatientLight implements Prover {
    private final Proofs known;
    private final ProvenLight light;

    PatientLight(Proofs known, ProvenLight light) {
        this.known = known;
        this.light = light;
    }

    @Override
    public Evidence darkness(Surface surface) {
        Evidence quick = known.dark().get(surface);
        boolean decided = quick instanceof Evidence.ProvedDark || quick instanceof Evidence.WitnessRay;
        return decided ? quick : light.darkness(surface);
    }

    @Override
    public Evidence.ExactShare pupilSeen(Surface surface, double share) {
        return light.pupilSeen(surface, share);
    }

    @Override
    public double mostReflected(Surface surface, Set<Surface> dark, double limit) {
        return light.mostReflected(surface, dark, limit);
    }
}
