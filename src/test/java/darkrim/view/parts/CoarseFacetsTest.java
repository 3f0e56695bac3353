package darkrim.view.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CoarseFacetsTest {
    /** Squares along a side of the sheet: 2 * 230 * 230 facets are more than are shown whole in a movement. */
    private static final int ALONG = 230;

    @Test
    void aSheetOfVeryManyFacetsKeepsItsAreaWithFarFewer(@TempDir Path folder) throws Exception {
        Stage stage = Stages.of(sheet(folder));
        var sheet = stage.scene().surfaces().stream()
                .filter(each -> each.name().startsWith("sheet"))
                .findFirst()
                .orElseThrow();
        CoarseFacets coarse = new CoarseFacets(stage.scene(), stage.box());
        assertThat(coarse.isCoarse(sheet)).isTrue();
        Pieces pieces = coarse.of(sheet);
        assertThat(pieces.count()).isBetween(100, sheet.facetCount() / 2);
        // A corner moves by at most a cube, a 160th of the diagonal, so that a border of 4 sides may be lost: 4 / 113
        // of the area.
        assertThat(area(pieces)).isBetween(0.96 * sheet.area(), 1.0001 * sheet.area());
    }

    @Test
    void stagesOfFewFacetsAreAlwaysShownWhole() {
        Stage stage = Stages.of("nightglow-a.yaml");
        CoarseFacets coarse = new CoarseFacets(stage.scene(), stage.box());
        assertThat(stage.scene().surfaces()).noneMatch(coarse::isCoarse);
    }

    private static double area(Pieces pieces) {
        double[] at = pieces.corners();
        double area = 0;
        for (int i = 0; i < at.length; i += 9) {
            Vector3D a = Vector3D.of(at[i], at[i + 1], at[i + 2]);
            Vector3D b = Vector3D.of(at[i + 3], at[i + 4], at[i + 5]);
            Vector3D c = Vector3D.of(at[i + 6], at[i + 7], at[i + 8]);
            area += b.subtract(a).cross(c.subtract(a)).norm() / 2;
        }
        return area;
    }

    private static Path sheet(Path folder) throws IOException {
        StringBuilder mesh = new StringBuilder("g sheet\n");
        for (int j = 0; j <= ALONG; j++) {
            for (int i = 0; i <= ALONG; i++) {
                mesh.append(
                        String.format(Locale.ROOT, "v %.5f %.5f 5%n", 50.0 * i / ALONG - 25, 50.0 * j / ALONG - 25));
            }
        }
        int row = ALONG + 1;
        for (int j = 0; j < ALONG; j++) {
            for (int i = 1; i <= ALONG; i++) {
                int a = j * row + i;
                mesh.append("f ")
                        .append(a)
                        .append(' ')
                        .append(a + 1)
                        .append(' ')
                        .append(a + row + 1)
                        .append('\n');
                mesh.append("f ")
                        .append(a)
                        .append(' ')
                        .append(a + row + 1)
                        .append(' ')
                        .append(a + row)
                        .append('\n');
            }
        }
        Files.writeString(folder.resolve("sheet.obj"), mesh);
        return Files.writeString(folder.resolve("sheet.yaml"), """
                title: Sheet of very many facets
                finishes:
                  black: {diffuse: 0.05, source: "invented"}
                beam:
                  pupil: {shape: disc, diameter: 40, distance: 300}
                parts:
                  sheet: {kind: mesh, file: sheet.obj, unit: mm, finish: black}
                requirements:
                  dark: {surfaces: "sheet/**", direct: {at_most: 2}}
                """);
    }
}
