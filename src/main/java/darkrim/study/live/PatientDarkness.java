package darkrim.study.live;

import darkrim.scene.Surface;
import darkrim.study.ProvenLight;
import darkrim.verdict.Evidence;
import darkrim.verdict.Proofs;
import darkrim.verdict.Prover;
import java.util.Set;

/**
 * The proofs of a whole check for the few surfaces whose direct light quick proofs left open, and the quick ones for all else: most of what a
 * whole check proves is about reflected light, and no verdict on direct light waits for it.
 */
final class PatientDarkness implements Prover {
    private final Proofs known;
    private final Set<Surface> open;
    private final QuickLight quick;
    private final ProvenLight light;

    /**
     * @param known what quick proofs said
     * @param open the surfaces to be proved with patience
     * @param quick answers for shares of the pupil
     * @param light answers for the open surfaces
     */
    PatientDarkness(Proofs known, Set<Surface> open, QuickLight quick, ProvenLight light) {
        this.known = known;
        this.open = Set.copyOf(open);
        this.quick = quick;
        this.light = light;
    }

    @Override
    public Evidence darkness(Surface surface) {
        Evidence before = known.dark().get(surface);
        return before == null || open.contains(surface) ? light.darkness(surface) : before;
    }

    @Override
    public Evidence.ExactShare pupilSeen(Surface surface, double share) {
        return quick.pupilSeen(surface, share);
    }

    @Override
    public double mostReflected(Surface surface, Set<Surface> dark, double limit) {
        return Double.POSITIVE_INFINITY;
    }
}
