package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import darkrim.present.Results;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The jar where the machine lets it down: no memory, no room, no streams, no locale; and files with awkward names. */
class FaultIT {
    private static final String DARK = "backs-dark: {surfaces: '{left,right}/back', direct: none}";

    @TempDir
    private Path folder;

    private void layout(String name) throws IOException {
        Files.writeString(folder.resolve(name), Results.yaml("", DARK));
    }

    private Run shell(Map<String, String> environment, String command, String... arguments) {
        List<String> words = Stream.concat(Stream.of("/bin/sh", "-c", command, "sh"), Stream.of(arguments))
                .toList();
        return Jar.end(Jar.start(folder, environment, words));
    }

    private Run run(Map<String, String> environment, String... arguments) {
        return Jar.end(Jar.start(folder, environment, Jar.brief(arguments)));
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void tooLittleMemoryIsSaidAndNothingHalfWrittenIsLeft() throws IOException {
        // A map of a million cells, for which the heap is far too small.
        String crowd = Results.SLIT
                .replace("RADIANCE", "")
                .replace("REQUIREMENTS", "  dim: {surfaces: screen/front, direct: {at_most: 0.9}}")
                .replace("cells: [15, 5]", "cells: [1000, 1000]");
        Files.writeString(folder.resolve("crowd.yaml"), crowd);
        Run run = shell(Map.of(), "exec java -Xmx10m -XX:+UseSerialGC \"$@\"", arguments("crowd.yaml"));
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.BROKEN);
        assertThat(run.errors())
                .contains("needs more memory than Java was given")
                .doesNotContain("\tat ");
        assertThat(names()).containsExactly("crowd.yaml");
    }

    private static String[] arguments(String layout) {
        List<String> command = Jar.brief("check", layout, "--json", "out.json");
        return command.subList(1, command.size()).toArray(String[]::new);
    }

    @Test
    void aFullDiskIsSaidAndNothingHalfWrittenIsLeft() throws Exception {
        layout("slit.yaml");
        Path disk = Files.createDirectory(folder.resolve("disk"));
        Run mounted =
                Jar.end(Jar.start(folder, Map.of(), List.of("mount", "-t", "tmpfs", "-o", "size=16k", "none", "disk")));
        assumeTrue(mounted.code() == 0, "only root may make a small disk");
        try {
            Files.write(disk.resolve("filler"), new byte[12 << 10]);
            Run run = run(Map.of(), "check", "slit.yaml", "--json", "disk/out.json");
            assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.UNUSABLE);
            assertThat(run.errors())
                    .contains("--json disk/out.json: the file could not be written")
                    .doesNotContain("\tat ");
            try (Stream<Path> files = Files.list(disk)) {
                assertThat(files).containsExactly(disk.resolve("filler"));
            }
        } finally {
            Jar.end(Jar.start(folder, Map.of(), List.of("umount", "disk")));
        }
    }

    @Test
    void aClosedErrorStreamChangesNoVerdict() throws IOException {
        layout("slit.yaml");
        String[] command = Jar.brief("check", "slit.yaml").toArray(String[]::new);
        assertThat(shell(Map.of(), "exec \"$@\" 2>&-", command).code()).isZero();
        command[command.length - 1] = "none.yaml";
        assertThat(shell(Map.of(), "exec \"$@\" 2>&-", command).code()).isEqualTo(ExitCode.UNUSABLE);
    }

    @Test
    void filesWithSpacesLinesAndForeignLettersAreReadInAnyLocale() throws IOException {
        layout("two words.yaml");
        layout("two\nlines.yaml");
        for (String name : List.of("two words.yaml", "two\nlines.yaml")) {
            Run run = run(Map.of("LC_ALL", "C"), "check", name, "--json", name + ".json");
            assertThat(run.code()).as(run.errors()).isZero();
            assertThat(folder.resolve(name + ".json")).isNotEmptyFile();
        }
        byte[] title = "Gr\u00f6\u00dfe".getBytes(StandardCharsets.UTF_8);
        Files.writeString(
                folder.resolve("title.yaml"),
                Results.yaml("", DARK).replace("Slit", new String(title, StandardCharsets.UTF_8)));
        Run run = run(Map.of("LC_ALL", "C"), "check", "title.yaml", "--json", "title.json");
        assertThat(run.code()).as(run.errors()).isZero();
        // The file is UTF-8 whatever the terminal can show.
        assertThat(folder.resolve("title.json")).content(StandardCharsets.UTF_8).contains("Gr\u00f6\u00dfe");
        Run foreign = shell(
                Map.of("LC_ALL", "C"),
                "cp 'two words.yaml' \"$(printf 'gr\\303\\266.yaml')\"; exec \"$@\" \"$(printf 'gr\\303\\266.yaml')\"",
                Jar.brief("check").toArray(String[]::new));
        assertThat(foreign.code()).as(foreign.errors()).isIn(ExitCode.PASS, ExitCode.UNUSABLE);
        assertThat(foreign.errors()).doesNotContain("Exception").doesNotContain("\tat ");
    }

    @Test
    void aHomeThatCannotBeWrittenHindersNoCheck() throws IOException {
        layout("slit.yaml");
        Run run = run(Map.of("HOME", "/proc/none", "XDG_CONFIG_HOME", "/proc/none"), "check", "slit.yaml");
        assertThat(run.code()).as(run.errors()).isZero();
    }
}
