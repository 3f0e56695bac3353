package darkrim.shadow;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import org.junit.jupiter.api.Test;

class ProbeTest {
    @Test
    void probe() {
        Scene scene = RandomScenes.scene(123);
        for (Surface s : scene.surfaces()) {
            System.out.println("SHOW " + s.name());
            for (int f = s.firstFacet(); f < s.firstFacet() + s.facetCount(); f++) {
                System.out.println("SHOW    " + scene.corner(f, 0) + scene.corner(f, 1) + scene.corner(f, 2));
            }
        }
    }
}
