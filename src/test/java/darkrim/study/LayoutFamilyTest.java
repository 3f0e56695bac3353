package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.SideFiles;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.junit.jupiter.api.Test;

class LayoutFamilyTest {
    private static final String LAYOUT = """
            title: A sheet
            finishes:
              coat: {reflectance_table: {as: diffuse, file: r.csv}}
            beam:
              pupil: {shape: disc, diameter: 20, distance: 200}
            parts:
              screen: {kind: rectangle, width: 4, depth: 3, finish: coat}
            requirements:
              dark: {surfaces: screen/back, direct: none}
            """;

    private static String identity(String layout, String table) throws Exception {
        SideFiles files = SideFiles.known("sheet.yaml", Map.of("r.csv", table.getBytes(StandardCharsets.UTF_8)));
        return LayoutFamily.of("sheet.yaml", layout.getBytes(StandardCharsets.UTF_8), files)
                .identity();
    }

    @Test
    void aTableOfContractionsAndTheShapeTellStudiesApart() throws Exception {
        String cooled = LAYOUT.replace(
                        "finishes:\n  coat: {reflectance_table: {as: diffuse, file: r.csv}}\n",
                        "cooldown: {works_at: 80, material: alloy}\nmaterials: {alloy: {file: r.csv}}\n")
                .replace(", finish: coat", "");
        String table = "temperature_k,contraction\n80,0.004\n293,0\n";
        String first = identity(cooled, table);
        assertThat(identity(cooled, table)).isEqualTo(first);
        assertThat(identity(cooled, table.replace("0.004", "0.0039"))).isNotEqualTo(first);
        SideFiles files = SideFiles.known("sheet.yaml", Map.of("r.csv", table.getBytes(StandardCharsets.UTF_8)));
        LayoutFamily family = LayoutFamily.of("sheet.yaml", cooled.getBytes(StandardCharsets.UTF_8), files);
        assertThat(family.warm().identity()).isNotEqualTo(first);
        assertThat(family.written().cooldown().orElseThrow().isCold()).isTrue();
        assertThat(family.warm().written().cooldown().orElseThrow().isCold()).isFalse();
        assertThat(family.written().source().sha256()).hasSize(64);
        Layout member = family.warm().with(Map.of(), new Findings());
        assertThat(member.temperature()).contains(293.0);
        assertThat(family.with(Map.of(), new Findings()).temperature()).contains(80.0);
    }

    @Test
    void aStudyOfALayoutIsAnotherOnceAFileThatItNamesHasChanged() throws Exception {
        String table = "angle_deg,reflectance\n0,0.04\n90,0.04\n";
        String first = identity(LAYOUT, table);
        assertThat(identity(LAYOUT, table)).isEqualTo(first);
        assertThat(identity(LAYOUT, table.replace("0,0.04", "0,0.05"))).isNotEqualTo(first);
        assertThat(identity(LAYOUT.replace("A sheet", "Another"), table)).isNotEqualTo(first);
    }
}
