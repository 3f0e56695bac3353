package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class AboveWindowTest {
    private static List<String> codes(String height) {
        String text = """
                title: A lid flush with the window
                dimensions: {underside: 0.1 mm, thick: 0.2 mm, top: underside + thick}
                beam:
                  pupil: {shape: disc, diameter: 10, distance: 100}
                  window: {at_height: %s, thickness: 1, n: 1.5}
                parts:
                  lid: {kind: plate, size: 20, height: underside, thickness: thick, finish: absorber}
                requirements:
                  even: {surfaces: lid/underside, direct: none}
                """.formatted(height);
        var reading = LayoutReader.read("case.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.hasErrors()).as(reading.findings().toString()).isFalse();
        Findings findings = new Findings();
        Assembly.of(reading.layout().orElseThrow(), findings);
        return findings.sorted().stream().map(Finding::code).toList();
    }

    /** The rays through the window start at its lower face, and nothing above that is followed: not even what rounding puts there. */
    @Test
    void partsMayReachToTheWindowAndNoFarther() {
        assertThat(codes("top + 0.1")).isEmpty();
        assertThat(codes("top - 1e-5")).containsExactly("above-window");
    }
}
