package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.light.RandomScenes;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class NoReflectionTest {
    /** 400 rays between any two surfaces of which one is proved unseen from the other, in 40 scenes: none of them may be clear. */
    @Test
    void noClearRayJoinsTwoSurfacesOfARandomSceneOfWhichOneIsProvedUnseen() {
        int proved = 0;
        int seen = 0;
        for (long seed = 1; seed <= 40; seed++) {
            Scene scene = new RandomScenes(seed).open(5);
            FacetTree tree = TestParts.tree(scene);
            SplittableRandom random = new SplittableRandom(seed);
            for (Surface receiver : scene.surfaces()) {
                if (random.nextInt(4) > 0) {
                    continue;
                }
                NoReflection none = new NoReflection(scene, tree, receiver, () -> false);
                for (Surface sender : scene.surfaces()) {
                    boolean unseen = none.isUnseen(sender);
                    int clear = clearRays(scene, tree, receiver, sender, unseen ? 400 : 20, random);
                    if (unseen) {
                        proved++;
                        assertThat(clear)
                                .as("seed %d, %s from %s", seed, sender.name(), receiver.name())
                                .isZero();
                    } else {
                        seen += clear;
                    }
                }
            }
        }
        assertThat(proved).isGreaterThan(1000);
        assertThat(seen).isGreaterThan(1000);
    }

    private static int clearRays(
            Scene scene, FacetTree tree, Surface from, Surface to, int rays, SplittableRandom random) {
        Ray ray = new Ray();
        int clear = 0;
        for (int i = 0; i < rays; i++) {
            int f = from.firstFacet() + random.nextInt(from.facetCount());
            int g = to.firstFacet() + random.nextInt(to.facetCount());
            Vector3D start = TestParts.point(scene, f, random);
            Vector3D way = TestParts.point(scene, g, random).subtract(start);
            double leaving = way.dot(scene.normal(f)) * (from.back() ? -1 : 1);
            double arriving = way.dot(scene.normal(g)) * (to.back() ? 1 : -1);
            if (leaving > 1e-6 && arriving > 1e-6) {
                ray.set(start, way, 1 - 1e-9, scene.plane(f));
                clear += tree.blocked(ray) ? 0 : 1;
            }
        }
        return clear;
    }
}
