package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The page of findings has one entry for each code, and each code has a file that triggers it; see also {@link PlacedLayouts}. */
class FindingsPageTest {
    /** Codes that need a file that is no text, too large, or not there; see {@link UnreadableFileTest}. */
    private static final Set<String> WITHOUT_TEXT = Set.of("unreadable", "too-large", "not-text");

    /** Codes that show when the parts are put together; darkrim.assembly.FinishCheckTest triggers them. */
    private static final Set<String> OF_THE_ASSEMBLY = Set.of("no-finish");

    /** Codes of mesh files and of what layouts say of them; MeshFileRefusalTest, StepFileTest and {@link MeshPartTest} trigger them. */
    private static final Set<String> OF_MESH_FILES = Set.of(
            "mesh-unreadable",
            "mesh-outside",
            "mesh-form",
            "mesh-value",
            "mesh-too-large",
            "mesh-key",
            "mesher-missing",
            "mesher-failed",
            "unknown-material",
            "material-without-finish");

    /** Codes of proofs behind curved meshes; darkrim.study.ChordDoubtTest triggers them. */
    private static final Set<String> OF_TOLERANCES = Set.of("mesh-tolerance", "within-tolerance");

    /** Codes that need a layout of very many facets; darkrim.cli.MillionFacetsIT triggers them. */
    private static final Set<String> OF_LARGE_LAYOUTS = Set.of("opening-margins-left-out");

    /** Codes of light that a check looks at in passing; darkrim.study.ReflectedAgainTest triggers them. */
    private static final Set<String> OF_LIGHT = Set.of("reflected-twice");

    /** Codes of commands that cannot do their work; darkrim.cli.WindowCommandsTest triggers them. */
    private static final Set<String> OF_COMMANDS = Set.of("window-not-followed");

    /** Codes that need a file beside the layout; see {@link FinishTablesTest}. */
    private static final Set<String> WITH_A_TABLE = Set.of("misfit");

    @Test
    void everyCodeHasAnEntryAndEveryEntryAFileThatTriggersIt() throws IOException {
        Set<String> entries = new TreeSet<>();
        Matcher heading = Pattern.compile("(?m)^### (.+)$").matcher(Files.readString(Path.of("docs/findings.md")));
        while (heading.find()) {
            assertThat(entries.add(heading.group(1))).as(heading.group(1)).isTrue();
        }
        Set<String> codes = new TreeSet<>(WITHOUT_TEXT);
        codes.addAll(OF_THE_ASSEMBLY);
        codes.addAll(OF_MESH_FILES);
        codes.addAll(OF_TOLERANCES);
        codes.addAll(OF_LARGE_LAYOUTS);
        codes.addAll(OF_LIGHT);
        codes.addAll(OF_COMMANDS);
        codes.addAll(WITH_A_TABLE);
        try (Stream<Path> files = Files.list(Path.of("src/test/resources/broken"))) {
            for (Path file : files.toList()) {
                LayoutReader.read(file).findings().forEach(finding -> codes.add(finding.code()));
            }
        }
        codes.addAll(PlacedLayouts.codes());
        assertThat(entries).isEqualTo(codes);
    }
}
