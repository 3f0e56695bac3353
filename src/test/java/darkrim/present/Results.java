package darkrim.present;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Results of small layouts, for tests. */
public final class Results {
    /** Enough for the first look at every surface of these layouts. */
    public static final long FEW_SAMPLES = 2_000_000;

    /** Two sheets above a screen: light falls through the slit between them. */
    public static final String SLIT = """
            title: Slit between two flags
            revision: C
            dimensions: {slit: 4 mm}
            finishes:
              grey: {diffuse: 0.5}
              shiny: {diffuse: 0.1, mirror: 0.5}
            beam:
              pupil: {shape: disc, diameter: 20, distance: 200}
              RADIANCE
            parts:
              screen: {kind: rectangle, width: 30, depth: 10, finish: grey}
              right:  {kind: rectangle, width: 20, depth: 20, at: [10 + slit / 2, 0, 8], finish: shiny}
              left:   {kind: rectangle, width: 20, depth: 20, at: [-10 - slit / 2, 0, 8], finish: shiny}
            requirements:
            REQUIREMENTS
            maps: {surfaces: "screen/front", cells: [15, 5]}
            """;

    private Results() {}

    /** The slit with requirements, one a line. */
    public static CheckResult slit(String... requirements) {
        return of(yaml("", requirements), FEW_SAMPLES, 2);
    }

    /** The text of the slit with requirements, and one more line for the beam. */
    public static String yaml(String beam, String... requirements) {
        return SLIT.replace("RADIANCE", beam).replace("REQUIREMENTS", "  " + String.join("\n  ", requirements));
    }

    /** The result of a layout in which nothing is wrong. */
    public static CheckResult of(String yaml, long samples, int threads) {
        LayoutReading reading = LayoutReader.read("slit.yaml", yaml.getBytes(StandardCharsets.UTF_8));
        Findings findings = new Findings();
        findings.addAll(reading.findings());
        try {
            Effort effort = new Effort(threads, Optional.empty(), Optional.of(samples));
            return Check.of(reading.layout().orElseThrow(), findings, effort, Watch.NONE);
        } catch (UnusableInput unusable) {
            throw new AssertionError(unusable.getMessage(), unusable);
        }
    }
}
