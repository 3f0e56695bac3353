package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.layout.form.Wording;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A name that is refused for its hidden characters does not show them where other names are listed. */
class HiddenCharactersTest {
    private static final String LAYOUT = """
            title: Names
            dimensions: {"wiHIDDENdth": 4}
            finishes: {"blHIDDENack": {diffuse: 0.1}}
            beam: {pupil: {shape: disc, diameter: 20, distance: 200}}
            parts:
              "scHIDDENreen": {kind: rectangle, width: widht, depth: 10, finish: blcak}
              other: {kind: rectangle, width: 10, depth: 10, finish: blcak}
            requirements:
              dim: {surfaces: "scren/front", direct: none}
            """;

    @ParameterizedTest
    @ValueSource(strings = {"\\u202e", "\\e[2J", "\\u200b", "\\u0007", "\\x9b"})
    void noFindingShowsThem(String hidden) {
        byte[] bytes = LAYOUT.replace("HIDDEN", hidden).getBytes(StandardCharsets.UTF_8);
        List<Finding> findings = LayoutReader.read("names.yaml", bytes).findings();
        assertThat(findings).isNotEmpty();
        assertThat(findings)
                .anySatisfy(finding -> assertThat(finding.toString()).contains("blcak"));
        assertThat(findings)
                .allSatisfy(
                        finding -> assertThat(finding.toString().codePoints()).noneMatch(Wording::isControl));
    }
}
