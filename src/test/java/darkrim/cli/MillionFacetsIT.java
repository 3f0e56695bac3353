package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** A shroud of a million facets is read, looked at and checked for light within 1.5 GiB of heap: minutes, so only with {@code -Dlong=true}. */
@EnabledIfSystemProperty(named = "long", matches = "true")
class MillionFacetsIT {
    private static final int SIDES = 1000;
    private static final int RINGS = 249;

    @TempDir
    private Path folder;

    @Test
    void aWavyTubeOfAMillionFacets() throws IOException {
        Files.write(folder.resolve("tube.stl"), tube());
        Files.writeString(folder.resolve("l.yaml"), """
                title: Million facets
                finishes: {black: {diffuse: 0.05}}
                beam: {pupil: {shape: disc, diameter: 45, distance: 320}, field: {half_width: 30}}
                parts:
                  sensor: {kind: block, width: 20, depth: 20, height: 1, at: [0, 0, -1], finish: black}
                  lid: {kind: plate, size: [150, 150], height: 2, thickness: 1, finish: black,
                        openings: {shape: rectangle, size: 24, knife_edge: {land: 0.05, bevel: 30, toward: pupil}}}
                  shroud: {kind: mesh, file: tube.stl, unit: mm, chord: 0.01, finish: black}
                requirements:
                  clean: {surfaces: "sensor/+z", once_reflected: {at_most: 1e-3}}
                  foot-dark: {surfaces: "sensor/-z", direct: none}
                  open: {surfaces: "sensor/+z", pupil_seen: {at_least: 0.9}}
                """);
        List<String> command = new ArrayList<>(Jar.command("check", "l.yaml"));
        command.add(1, "-Xmx1536m");
        Run run = Jar.end(Jar.start(folder, Map.of(), command));
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors()).contains("the layout has 1000052 facets").contains("[opening-margins-left-out]");
        assertThat(run.output()).contains("PASS: all 3 requirements hold.");
    }

    /** Inner and outer wall about the z axis with waves of 0.3 mm, and two flat rings that close it. */
    private static byte[] tube() {
        int facets = 4 * SIDES * RINGS + 4 * SIDES;
        ByteBuffer bytes = ByteBuffer.allocate(84 + 50 * facets).order(ByteOrder.LITTLE_ENDIAN);
        bytes.position(80).putInt(facets);
        for (int s = 0; s < SIDES; s++) {
            for (int r = 0; r < RINGS; r++) {
                quad(bytes, at(48, r, s), at(48, r, s + 1), at(48, r + 1, s + 1), at(48, r + 1, s));
                quad(bytes, at(45, r, s + 1), at(45, r, s), at(45, r + 1, s), at(45, r + 1, s + 1));
            }
            quad(bytes, at(45, 0, s), at(45, 0, s + 1), at(48, 0, s + 1), at(48, 0, s));
            quad(bytes, at(45, RINGS, s + 1), at(45, RINGS, s), at(48, RINGS, s), at(48, RINGS, s + 1));
        }
        return bytes.array();
    }

    private static float[] at(double radius, int ring, int side) {
        double turn = 2 * Math.PI * (side % SIDES) / SIDES;
        double z = 10 + 60.0 * ring / RINGS;
        double wavy = radius + 0.3 * StrictMath.sin(12 * turn) * StrictMath.sin(0.7 * z);
        return new float[] {(float) (wavy * StrictMath.cos(turn)), (float) (wavy * StrictMath.sin(turn)), (float) z};
    }

    private static void quad(ByteBuffer bytes, float[] a, float[] b, float[] c, float[] d) {
        triangle(bytes, a, b, c);
        triangle(bytes, a, c, d);
    }

    private static void triangle(ByteBuffer bytes, float[] a, float[] b, float[] c) {
        bytes.putFloat(0).putFloat(0).putFloat(0);
        for (float[] corner : List.of(a, b, c)) {
            bytes.putFloat(corner[0]).putFloat(corner[1]).putFloat(corner[2]);
        }
        bytes.putShort((short) 0);
    }
}
