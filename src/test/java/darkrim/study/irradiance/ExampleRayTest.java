package darkrim.study.irradiance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.present.Results;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.CheckResult;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Rays through a slit of 4 mm that lies 8 mm above a screen, from a pupil of 20 mm at 200 mm. */
class ExampleRayTest {
    private static CheckResult checked(String grey) {
        String yaml = Results.yaml("", "dark: {surfaces: \"right/back\", direct: none}")
                .replace("grey: {diffuse: 0.5}", "grey: " + grey);
        return Results.of(yaml, 200_000, 2);
    }

    private static Surface surface(CheckResult result, String name) {
        return result.scene().surface(name).orElseThrow();
    }

    private static void assertComesThroughTheSlit(Vector3D onPupil, Vector3D onScreen) {
        assertThat(onPupil.getZ()).isCloseTo(200, within(1e-9));
        assertThat(Math.hypot(onPupil.getX(), onPupil.getY())).isLessThan(10 + 1e-9);
        assertThat(onScreen.getZ()).isCloseTo(0, within(1e-9));
        assertThat(Math.abs(onScreen.getX())).isLessThan(15);
        assertThat(Math.abs(onPupil.lerp(onScreen, 192.0 / 200).getX())).isLessThan(2 + 1e-9);
    }

    @Test
    void aDirectRayComesThroughTheSlit() {
        CheckResult result = checked("{diffuse: 0.5}");
        List<Vector3D> ray = new ExampleRay(CheckedLight.of(result))
                .direct(surface(result, "screen/front"))
                .orElseThrow();
        assertThat(ray).hasSize(2);
        assertComesThroughTheSlit(ray.get(0), ray.get(1));
    }

    @Test
    void aReflectedRayTurnsOnTheScreenAndArrivesAtTheUnderside() {
        CheckResult result = checked("{diffuse: 0.5}");
        List<Vector3D> ray = new ExampleRay(CheckedLight.of(result))
                .reflected(surface(result, "right/back"))
                .orElseThrow();
        assertThat(ray).hasSize(3);
        assertComesThroughTheSlit(ray.get(0), ray.get(1));
        assertThat(ray.get(2).getZ()).isCloseTo(8, within(1e-9));
        assertThat(ray.get(2).getX()).isBetween(2.0, 22.0);
    }

    @Test
    void aMirroredRayLeavesAsSteeplyAsItArrives() {
        CheckResult result = checked("{diffuse: 0, mirror: 0.5}");
        List<Vector3D> ray = new ExampleRay(CheckedLight.of(result))
                .reflected(surface(result, "right/back"))
                .orElseThrow();
        assertComesThroughTheSlit(ray.get(0), ray.get(1));
        Vector3D in = ray.get(1).subtract(ray.get(0)).normalize();
        Vector3D out = ray.get(2).subtract(ray.get(1)).normalize();
        assertThat(out.getX()).isCloseTo(in.getX(), within(1e-6));
        assertThat(out.getY()).isCloseTo(in.getY(), within(1e-6));
        assertThat(out.getZ()).isCloseTo(-in.getZ(), within(1e-6));
    }

    @Test
    void aCurvedMirrorReflectsByTheFacetThatIsMet() {
        String yaml = """
                title: A mirror tube over a screen
                units: {length: mm, angle: deg}
                finishes:
                  black: {diffuse: 0.04}
                  bright: {mirror: 0.9}
                beam:
                  pupil: {shape: disc, diameter: 20, distance: 200}
                parts:
                  screen: {kind: rectangle, width: 8, depth: 8, finish: black}
                  tube: {kind: tube, inner_diameter: 10, outer_diameter: 11, base: 1, height: 30, finish: bright}
                requirements:
                  dim: {surfaces: screen/front, once_reflected: {at_most: 0.5}}
                """;
        CheckResult result = Results.of(yaml, 200_000, 2);
        List<Vector3D> ray = new ExampleRay(CheckedLight.of(result))
                .reflected(surface(result, "screen/front"))
                .orElseThrow();
        Vector3D in = ray.get(1).subtract(ray.get(0)).normalize();
        Vector3D out = ray.get(2).subtract(ray.get(1)).normalize();
        // By the law of reflection the change of direction is along the normal, which for the tube lies across its
        // axis.
        assertThat(out.getZ()).isCloseTo(in.getZ(), within(1e-9));
        Vector3D normal = out.subtract(in).normalize();
        assertThat(out.dot(normal)).isCloseTo(-in.dot(normal), within(1e-9));
        Scene scene = result.scene();
        double nearest = result.scene().surfaces().stream()
                .filter(surface -> surface.name().startsWith("tube"))
                .flatMapToDouble(surface -> IntStream.range(
                                surface.firstFacet(), surface.firstFacet() + surface.facetCount())
                        .filter(f -> Math.abs(scene.normal(f).dot(ray.get(1).subtract(scene.corner(f, 0)))) < 1e-6)
                        .mapToDouble(f -> 1 - Math.abs(scene.normal(f).dot(normal))))
                .min()
                .orElseThrow();
        assertThat(nearest).isLessThan(1e-9);
    }

    @Test
    void whereNoLightComesThereIsNoRay() {
        CheckResult result = checked("{diffuse: 0}");
        ExampleRay rays = new ExampleRay(CheckedLight.of(result));
        assertThat(rays.direct(surface(result, "screen/back"))).isEmpty();
        assertThat(rays.reflected(surface(result, "right/back"))).isEmpty();
    }
}
