package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.assembly.Assembly;
import darkrim.assembly.Body;
import darkrim.assembly.MeshText;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Receiver;
import darkrim.light.Transport;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.shadow.Darkness;
import darkrim.shadow.DarknessProof;
import darkrim.shadow.VisiblePupil;
import darkrim.trace.FacetTree;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A part that was written to a mesh file and read back stops and throws the same light as the part itself. */
class MeshAgainstPartTest {
    /** Each kind of closed part, above a screen that some of its shadow falls on. */
    private static final List<String> PARTS = List.of(
            "kind: plate, size: [40, 40], height: 5, thickness: 1, openings: {shape: rectangle, size: [12, 9], centre: [2, 1],"
                    + " knife_edge: {land: 0.05, bevel: 30, toward: pupil}}",
            "kind: plate, diameter: 40, height: 5, thickness: 1, openings: {shape: disc, diameter: 11, knife_edge: {land: 0.1,"
                    + " bevel: 40, toward: detector}}",
            "kind: box, width: 14, depth: 11, base: 3, height: 9, tilt: -4, thickness: 1",
            "kind: tube, inner_diameter: 12, outer_diameter: 15, base: 2, height: 8",
            "kind: block, width: 7, depth: 5, height: 2, at: [1, 2, 4]");

    @TempDir
    private Path folder;

    static Stream<Arguments> partsAndFormats() {
        return PARTS.stream()
                .flatMap(part ->
                        Stream.of("text.stl", "binary.stl", "groups.obj").map(end -> Arguments.of(part, end)));
    }

    private record Lit(Scene scene, FacetTree tree) {
        static Lit of(Layout layout) {
            Findings findings = new Findings();
            Assembly assembly = Assembly.of(layout, findings);
            assertThat(findings.sorted()).isEmpty();
            Scene scene = SceneFactory.of(layout, assembly);
            return new Lit(scene, FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound()));
        }
    }

    private Layout layout(String part) {
        String text = """
                title: t
                finishes: {white: {diffuse: 0.7}, black: {diffuse: 0.1, mirror: 0.1}}
                beam: {pupil: {shape: disc, diameter: 45, distance: 120}}
                parts:
                  screen: {kind: rectangle, width: 30, depth: 30, finish: white}
                  below: {kind: rectangle, width: 4, depth: 4, at: [0.5, 0.5, 1], finish: white}
                  it: {%s, finish: black}
                requirements: {d: {surfaces: "screen/front", direct: none}}
                """.formatted(part);
        LayoutReading reading =
                LayoutReader.read(folder.resolve("l.yaml").toString(), text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return reading.layout().orElseThrow();
    }

    private void write(String file, Layout layout) throws IOException {
        Body body = Assembly.of(layout, new Findings()).bodies().stream()
                .filter(each -> each.name().equals("it"))
                .findFirst()
                .orElseThrow();
        Path path = folder.resolve(file);
        switch (file) {
            case "text.stl" ->
                Files.writeString(path, MeshText.stl(body.triangles().toList()));
            case "binary.stl" ->
                Files.write(path, MeshText.binaryStl(body.triangles().toList()));
            default -> Files.writeString(path, MeshText.obj(body.faces()));
        }
    }

    @ParameterizedTest
    @MethodSource("partsAndFormats")
    void shadowsAreTheSameAndLightToo(String part, String file) throws IOException {
        Layout drawn = layout(part);
        write(file, drawn);
        Lit one = Lit.of(drawn);
        Lit other = Lit.of(layout("kind: mesh, unit: mm, chord: 0.001, file: " + file));
        // A float of 24 bits is off by 2^-24 of the coordinate, up to 20 mm; other formats keep every digit.
        boolean rounded = file.equals("binary.stl");
        assertThat(other.scene.facetCount()).isEqualTo(one.scene.facetCount());
        VisiblePupil exact = new VisiblePupil(one.scene, one.tree);
        VisiblePupil read = new VisiblePupil(other.scene, other.tree);
        for (int i = 0; i < 81; i++) {
            int row = i / 9;
            Vector3D point = Vector3D.of(-11 + 2.7 * (i % 9), -10.3 + 2.6 * row, 0);
            double share = exact.from(point, Vector3D.Unit.PLUS_Z).areaFraction();
            double again = read.from(point, Vector3D.Unit.PLUS_Z).areaFraction();
            // The rim moves by 1.2e-6 mm at most, magnified by 120 / 3 on the pupil of 45 mm: 4 / (45 pi) of it is the
            // share.
            assertThat(again).as("at %s", point).isEqualTo(share, within(rounded ? 4e-6 : 1e-10));
        }
        for (String surface : List.of("screen/front", "screen/back", "below/front")) {
            Darkness proved = new DarknessProof(one.scene, one.tree)
                    .of(one.scene.surface(surface).orElseThrow());
            Darkness provedAgain = new DarknessProof(other.scene, other.tree)
                    .of(other.scene.surface(surface).orElseThrow());
            assertThat(provedAgain).as(surface).hasSameClassAs(proved);
        }
        sameLight(one, other, LightClass.DIRECT);
        sameLight(one, other, LightClass.ONCE_REFLECTED);
    }

    /**
     * Sampled with other random numbers. Thirty comparisons at 4.5 standard errors fail by chance once in 5,000 runs with another seed; with
     * this one they did not.
     */
    private static void sameLight(Lit one, Lit other, LightClass light) {
        Estimate first = estimate(one, light, 5);
        Estimate second = estimate(other, light, 6);
        double error = Math.hypot(first.standardError(), second.standardError());
        assertThat(second.mean()).as("%s", light).isEqualTo(first.mean(), within(4.5 * error + 1e-12));
        assertThat(first.mean()).isPositive();
    }

    private static Estimate estimate(Lit lit, LightClass light, long seed) {
        Transport transport = new Transport(lit.scene, lit.tree, seed);
        Receiver receiver =
                new Receiver.OnSurface(lit.scene.surface("screen/front").orElseThrow());
        return transport.batch(receiver, light, 0, 100_000).irradiance();
    }
}
