package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

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
    void aStudyOfALayoutIsAnotherOnceAFileThatItNamesHasChanged() throws Exception {
        String table = "angle_deg,reflectance\n0,0.04\n90,0.04\n";
        String first = identity(LAYOUT, table);
        assertThat(identity(LAYOUT, table)).isEqualTo(first);
        assertThat(identity(LAYOUT, table.replace("0,0.04", "0,0.05"))).isNotEqualTo(first);
        assertThat(identity(LAYOUT.replace("A sheet", "Another"), table)).isNotEqualTo(first);
    }
}
