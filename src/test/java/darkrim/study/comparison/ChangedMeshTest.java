package darkrim.study.comparison;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A part whose mesh file has other bytes is named, whatever the file is called. */
class ChangedMeshTest {
    @TempDir
    private Path folder;

    private Layout layout(String file, String corner) throws IOException {
        Files.writeString(folder.resolve(file), """
                solid a
                facet normal 0 0 1
                outer loop
                vertex 0 0 0
                vertex 1 0 0
                vertex %s
                endloop
                endfacet
                endsolid a
                """.formatted(corner));
        String text = """
                title: t
                finishes: {black: {diffuse: 0.04}}
                beam: {pupil: {shape: disc, diameter: 30, distance: 200}}
                parts: {leaf: {kind: mesh, file: %s, unit: mm, finish: black}}
                requirements: {dark: {surfaces: "leaf/**", direct: none}}
                """.formatted(file);
        return LayoutReader.read(folder.resolve("l.yaml").toString(), text.getBytes(StandardCharsets.UTF_8))
                .layout()
                .orElseThrow();
    }

    @Test
    void onlyOtherBytesAreADifference() throws IOException {
        Layout before = layout("a.stl", "0 1 0");
        assertThat(SettingDifferences.others(before, layout("b.stl", "0 1 0"))).isEmpty();
        assertThat(SettingDifferences.others(before, layout("c.stl", "0 1.001 0")))
                .singleElement()
                .satisfies(change -> {
                    assertThat(change.name()).isEqualTo("mesh file of leaf");
                    assertThat(change.before()).isNotEqualTo(change.after());
                    assertThat(change.after().orElseThrow()).startsWith("SHA-256 ");
                });
    }
}
