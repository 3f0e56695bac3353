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
    private final Set<Surface> settled;
    private final ProvenLight light;

    /**
     * @param known what was proved so far
     * @param settled the surfaces that were already looked at with all patience
     * @param light answers for all others that are open
     */
    PatientLight(Proofs known, Set<Surface> settled, ProvenLight light) {
        this.known = known;
        this.settled = Set.copyOf(settled);
        this.light = light;
    }

    @Override
    public Evidence darkness(Surface surface) {
        Evidence quick = known.dark().get(surface);
        boolean decided = quick instanceof Evidence.ProvedDark || quick instanceof Evidence.WitnessRay;
        return decided || settled.contains(surface) ? quick : light.darkness(surface);
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
