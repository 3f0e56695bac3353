package darkrim.study;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.Darkness;
import darkrim.shadow.DarknessProof;
import darkrim.shadow.WitnessRay;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;

/** What the proofs of darkness say, as evidence for verdicts. */
final class ProvenLight {
    private final DarknessProof proof;

    ProvenLight(Scene scene, FacetTree tree) {
        this.proof = new DarknessProof(scene, tree);
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
