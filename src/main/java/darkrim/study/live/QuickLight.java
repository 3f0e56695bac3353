package darkrim.study.live;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.FullyLitProof;
import darkrim.shadow.LeastShare;
import darkrim.shadow.ProofSettings;
import darkrim.study.ProvenLight;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import darkrim.verdict.Prover;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;

/**
 * The same proofs with little patience: what they say holds, but they leave open what takes long, such as an edge that is lit by micrometres, and
 * say of a share only whether it suffices. Bounds of reflected light are not looked for.
 */
final class QuickLight implements Prover {
    private static final ProofSettings QUICK =
            new ProofSettings(ProofSettings.DEFAULT.smallestPiece(), 500, ProofSettings.DEFAULT.gapWidth());
    private static final ProofSettings WHOLE_PUPIL = new ProofSettings(0.01, 200, ProofSettings.DEFAULT.gapWidth());
    private static final long SHARE_PAIRS = 1_000;

    private final ProvenLight darkness;
    private final FullyLitProof wholePupil;
    private final LeastShare leastShare;
    private final BooleanSupplier stop;

    QuickLight(Scene scene, FacetTree tree, BooleanSupplier stop) {
        darkness = new ProvenLight(scene, tree, QUICK, stop);
        wholePupil = new FullyLitProof(scene, tree, WHOLE_PUPIL, stop);
        leastShare = new LeastShare(scene, tree, SHARE_PAIRS);
        this.stop = stop;
    }

    @Override
    public Evidence darkness(Surface surface) {
        return darkness.darkness(surface);
    }

    @Override
    public Evidence.ExactShare pupilSeen(Surface surface, double share) {
        if (wholePupil.of(surface).proved()) {
            return Evidence.ExactShare.WHOLE;
        }
        LeastShare.Bracket found = leastShare.sideOf(surface, share, stop);
        return new Evidence.ExactShare(found.atLeast(), found.atMost(), Optional.of(found.point()));
    }

    @Override
    public double mostReflected(Surface surface, Set<Surface> dark, double limit) {
        return Double.POSITIVE_INFINITY;
    }
}
