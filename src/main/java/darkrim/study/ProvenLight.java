package darkrim.study;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.Darkness;
import darkrim.shadow.DarknessProof;
import darkrim.shadow.ProofSettings;
import darkrim.shadow.WitnessRay;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import java.util.function.BooleanSupplier;

/** What the proofs of darkness say, as evidence for verdicts. */
final class ProvenLight {
    private final DarknessProof proof;

    /**
     * @param stop whether to give up, asked from any thread: what is not proved by then is open
     */
    ProvenLight(Scene scene, FacetTree tree, BooleanSupplier stop) {
        this.proof = new DarknessProof(scene, tree, ProofSettings.DEFAULT, stop);
    }

    Evidence of(Surface surface) {
        Darkness found = proof.of(surface);
        if (found instanceof Darkness.Dark) {
            // Wider than the setting where the scene is large.
            return new Evidence.ProvedDark(found.effort().gapWidth());
        }
        if (found instanceof Darkness.Lit lit) {
            WitnessRay ray = lit.witness();
            return new Evidence.WitnessRay(ray.from(), ray.to());
        }
        Darkness.Undecided open = (Darkness.Undecided) found;
        return new Evidence.OpenArea(open.openArea(), open.openFraction());
    }
}
