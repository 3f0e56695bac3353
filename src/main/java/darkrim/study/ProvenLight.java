package darkrim.study;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.Darkness;
import darkrim.shadow.DarknessProof;
import darkrim.shadow.FullyLitProof;
import darkrim.shadow.LeastShare;
import darkrim.shadow.ProofSettings;
import darkrim.shadow.ReflectedBound;
import darkrim.shadow.WitnessRay;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import darkrim.verdict.Prover;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What the proofs of the exact shadows say, as evidence for verdicts. */
public final class ProvenLight implements Prover {
    /** A first look; where it fails, the share is bounded. */
    private static final ProofSettings WHOLE_PUPIL = new ProofSettings(0.01, 2_000, ProofSettings.DEFAULT.gapWidth());

    private final Scene scene;
    private final FacetTree tree;
    private final DarknessProof proof;
    private final FullyLitProof wholePupil;
    /** Made when it is first asked for: where the whole pupil is seen it never is. */
    private Optional<LeastShare> leastShare = Optional.empty();

    private final BooleanSupplier stop;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param stop whether to give up, asked from any thread: what is not proved by then is open
     */
    public ProvenLight(Scene scene, FacetTree tree, BooleanSupplier stop) {
        this(scene, tree, ProofSettings.DEFAULT, stop);
    }

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param darkness how hard a proof of darkness tries
     * @param stop whether to give up, asked from any thread: what is not proved by then is open
     */
    public ProvenLight(Scene scene, FacetTree tree, ProofSettings darkness, BooleanSupplier stop) {
        this.stop = stop;
        this.scene = scene;
        this.tree = tree;
        this.proof = new DarknessProof(scene, tree, darkness, stop);
        this.wholePupil = new FullyLitProof(scene, tree, WHOLE_PUPIL, stop);
    }

    @Override
    public Evidence darkness(Surface surface) {
        Darkness found = proof.of(surface);
        if (found instanceof Darkness.Dark) {
            // Wider than the setting where the scene is large.
            return new Evidence.ProvedDark(found.effort().gapWidth());
        }
        if (found instanceof Darkness.Lit lit) {
            WitnessRay ray = lit.witness();
            Vector3D from = scene.beam().window().isEmpty()
                    ? ray.from()
                    : scene.beam().origin(ray.to(), ray.from().subtract(ray.to()));
            return new Evidence.WitnessRay(from, ray.to());
        }
        Darkness.Undecided open = (Darkness.Undecided) found;
        return new Evidence.OpenArea(open.openArea(), open.openFraction());
    }

    @Override
    public Evidence.ExactShare pupilSeen(Surface surface, double share) {
        if (wholePupil.of(surface).proved()) {
            return Evidence.ExactShare.WHOLE;
        }
        LeastShare.Bracket found = leastShare().against(surface, share, stop);
        List<String> hiddenBy =
                found.atMost() < share ? PupilHiders.of(scene, tree, surface, found.point()) : List.of();
        return new Evidence.ExactShare(found.atLeast(), found.atMost(), Optional.of(found.point()), hiddenBy);
    }

    private synchronized LeastShare leastShare() {
        if (leastShare.isEmpty()) {
            leastShare = Optional.of(new LeastShare(scene, tree));
        }
        return leastShare.get();
    }

    @Override
    public double mostReflected(Surface surface, Set<Surface> dark, double limit) {
        return new ReflectedBound(scene, tree, dark, stop).of(surface, limit);
    }
}
