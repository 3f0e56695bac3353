package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ProbeTest {
    @Test
    void probe() {
        String[] cases = {
            "1 face[1]/+z",
            "3 part[2]/+z",
            "62 part[3]/-y",
            "73 part[4]/+z",
            "76 part[0]/+z",
            "80 part[2]/+z",
            "123 face[1]/-x",
            "183 part[0]/+y",
            "210 part[1]/opening[0]/step[1]/-x",
            "223 part[1]/side/+y",
            "239 part[0]"
        };
        for (String c : cases) {
            long seed = Long.parseLong(c.substring(0, c.indexOf(" ")));
            String name = c.substring(c.indexOf(" ") + 1);
            Scene scene = RandomScenes.scene(seed);
            FacetTree tree = TestParts.tree(scene);
            long t = System.nanoTime();
            var d = new DarknessProof(scene, tree, new ProofSettings(0.002, 100000, 1e-6))
                    .of(scene.surface(name).orElseThrow());
            System.out.println("SHOW " + c + " " + d + " " + (System.nanoTime() - t) * 1e-9 + " s; clear rays of 1e6: "
                    + RandomScenes.clearRays(
                            scene, tree, scene.surface(name).orElseThrow(), 1000000, new SplittableRandom(1))
                    + " field " + scene.beam().fieldLimit().isPresent() + " "
                    + scene.beam().pupil().outline().getClass().getSimpleName());
        }
    }
}
