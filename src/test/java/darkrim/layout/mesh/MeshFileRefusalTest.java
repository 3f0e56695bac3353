package darkrim.layout.mesh;

import static darkrim.layout.mesh.MeshFolder.FACET;
import static darkrim.layout.mesh.MeshFolder.binary;
import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A mesh file that cannot be read is refused with the place of the mistake, within bounded time and memory. */
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class MeshFileRefusalTest {
    @TempDir
    private Path folder;

    private MeshFolder meshes() {
        return new MeshFolder(folder);
    }

    @Test
    void aBinaryFileThatIsCutOffOrLiesAboutItsNumberIsRefused() throws IOException {
        byte[] whole = binary(1, 0, 0, 0, 1, 0, 0, 0, 1, 0);
        byte[] cut = java.util.Arrays.copyOf(whole, 120);
        assertThat(meshes().refusal("cut.stl", cut))
                .isEqualTo("cut.stl: byte 80: the header states 1 facets, which take 134 bytes, but the file has 120:"
                        + " it is cut off, or no STL file, expected a whole one [mesh-form]");
        assertThat(meshes().refusal("lie.stl", binary(1_000_000, 0, 0, 0, 1, 0, 0, 0, 1, 0)))
                .isEqualTo("lie.stl: byte 80: the header states 1000000 facets, which take 50000084 bytes, but the file"
                        + " has 134: it is cut off, or no STL file, expected a whole one [mesh-form]");
        assertThat(meshes().refusal("more.stl", binary(-1, 0, 0, 0, 1, 0, 0, 0, 1, 0)))
                .contains("states 4294967295 facets");
        assertThat(meshes().refusal("short.stl", new byte[20])).contains("the file has 20 bytes and no word 'solid'");
    }

    @Test
    void tooManyFacetsAreRefusedBeforeTheyAreRead() throws IOException {
        int facets = MeshReader.MOST_FACETS + 1;
        Path file = folder.resolve("huge.stl");
        try (var channel = Files.newByteChannel(
                file, java.nio.file.StandardOpenOption.CREATE, java.nio.file.StandardOpenOption.WRITE)) {
            channel.write(ByteBuffer.wrap(binary(facets)));
            // A hole of the right size, which takes no room on the disk.
            channel.position(BinaryStl.bytes(facets) - 1);
            channel.write(ByteBuffer.wrap(new byte[1]));
        }
        assertThat(meshes().refusal("huge.stl"))
                .isEqualTo("huge.stl: byte 80: the file has 4000001 facets, expected at most 4000000 [mesh-too-large]");
    }

    @Test
    void numbersThatAreNoneAreNamedByByteOrLine() throws IOException {
        assertThat(meshes().refusal("n.stl", binary(2, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 0, 1, Float.NaN, 0, 0, 1, 0)))
                .isEqualTo("n.stl: byte 134: facet 2 has a corner that is not finite, expected numbers [mesh-value]");
        assertThat(meshes().refusal("n2.stl", "solid a\n" + FACET.replace("1 0 0", "nan 0 0") + "endsolid\n"))
                .startsWith("n2.stl:5:")
                .endsWith("[mesh-form]");
        assertThat(meshes().refusal("n3.stl", "solid a\n" + FACET.replace("1 0 0", "1e999 0 0") + "endsolid\n"))
                .startsWith("n3.stl:")
                .endsWith("is not finite, expected numbers [mesh-value]");
        assertThat(meshes().refusal("n.obj", "v 0 0 0\nv 1e999 0 0\nv 0 1 0\nf 1 2 3\n"))
                .isEqualTo("n.obj:2:1: this point is not finite, expected numbers [mesh-value]");
    }

    @Test
    void textIsRefusedAtLineAndColumn() throws IOException {
        assertThat(meshes().refusal("a.stl", "solid a\n" + FACET + FACET.replace("vertex 1", "vertx 1") + "endsolid\n"))
                .isEqualTo("a.stl:12:3: expected [vertex] but found [vertx] [mesh-form]");
        // The place counts from the beginning of the file, whichever solid it is in.
        assertThat(meshes().refusal(
                                "b.stl",
                                "solid a\n" + FACET + "endsolid a\nsolid b\n" + FACET.replace("endloop", "end")
                                        + "endsolid\n"))
                .startsWith("b.stl:16:2: ");
        assertThat(meshes().refusal("c.stl", "solid a\n" + FACET))
                .startsWith("c.stl:9:1: ")
                .endsWith("[mesh-form]");
        assertThat(meshes().refusal("d.stl", "")).contains("the file has 0 bytes and no word 'solid'");
        assertThat(meshes().refusal("e.stl", "solid a\n" + FACET + "endsolid\nrubbish\n"))
                .startsWith("e.stl:10:1: ")
                .endsWith("[mesh-form]");
    }

    @ParameterizedTest
    @CsvSource({"9, 4:7", "0, 4:7", "-4, 4:7", "x, 4:7", "99999999999, 4:7"})
    void aCornerThatDoesNotExistIsNamed(String number, String place) throws IOException {
        assertThat(meshes().refusal("i.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 " + number + "\n"))
                .startsWith("i.obj:" + place + ": ")
                .endsWith("[mesh-form]");
    }

    @Test
    void polygonsThatCannotBeSplitAreNamedByLine() throws IOException {
        String points = "v 0 0 0\nv 2 2 0\nv 2 0 0\nv 0 2 0\nv 1 3 0\n";
        assertThat(meshes().refusal("p.obj", points + "f 1 2 3 4 5\n"))
                .startsWith("p.obj:6:1: this face cannot be split into triangles: ");
        assertThat(meshes().refusal("q.obj", "v 0 0 0\nv 1 0 0\nv 2 1 1\nv 1 2 0\nv 0 1 1\nf 1 2 3 4 5\n"))
                .isEqualTo(
                        "q.obj:6:1: this face cannot be split into triangles: a face of 5 corners is not flat, expected a flat face with corners in order [mesh-form]");
        assertThat(meshes().refusal("r.obj", "v 0 0 0\n"))
                .isEqualTo("r.obj:1:1: the file has no faces, expected lines that begin with f [mesh-form]");
    }

    @Test
    void linesWithoutEndTakeBoundedMemory() throws IOException {
        for (String name : List.of("long.stl", "long.obj")) {
            try (OutputStream out = Files.newOutputStream(folder.resolve(name))) {
                out.write(
                        name.endsWith("stl")
                                ? "solid a\nfacet normal ".getBytes(StandardCharsets.US_ASCII)
                                : "v ".getBytes(StandardCharsets.US_ASCII));
                byte[] nines = new byte[1 << 20];
                java.util.Arrays.fill(nines, (byte) '9');
                for (int i = 0; i < 64; i++) {
                    out.write(nines);
                }
            }
        }
        assertThat(meshes().refusal("long.stl"))
                .isEqualTo("long.stl:2:1: a line has more than 1000 characters, expected fewer [mesh-form]");
        assertThat(meshes().refusal("long.obj"))
                .startsWith("long.obj:1:")
                .endsWith("[mesh-form]")
                .hasSizeLessThan(300);
    }

    @Test
    void packedFilesAndOtherFormatsAreRefused() throws IOException {
        assertThat(meshes().refusal("z.stl", new byte[] {'P', 'K', 3, 4, 0, 0})).contains("the file is packed (zip)");
        assertThat(meshes().refusal("z.obj", new byte[] {0x1f, (byte) 0x8b, 8, 0}))
                .contains("the file is packed (gzip)");
        assertThat(meshes().refusal("x.step", "ISO-10303-21;"))
                .contains("the name ends in none of .stl, .obj, .step and .stp");
        assertThat(meshes().refusal("b.obj", new byte[] {'v', ' ', 0, 1, 2})).contains("the file is not text");
    }

    @Test
    void onlyFilesBesideTheLayoutAreReadUnlessItSaysOtherwise() throws IOException {
        Path inner = Files.createDirectory(folder.resolve("inner"));
        Files.writeString(folder.resolve("o.stl"), "solid a\n" + FACET + "endsolid\n");
        Files.createSymbolicLink(inner.resolve("link.stl"), folder.resolve("o.stl"));
        MeshFiles files = MeshFiles.beside(inner.resolve("l.yaml").toString());
        for (String name :
                List.of("../o.stl", "link.stl", folder.resolve("o.stl").toString())) {
            Findings findings = new Findings();
            assertThat(files.read(name, false, Place.IN_CODE, findings)).isEmpty();
            assertThat(findings.sorted()).extracting(Finding::code).containsExactly("mesh-outside");
            assertThat(files.read(name, true, Place.IN_CODE, findings)).isPresent();
            // What was allowed for one part is not for another.
            assertThat(files.read(name, false, Place.IN_CODE, new Findings())).isEmpty();
        }
        Files.createDirectory(folder.resolve("d.stl"));
        assertThat(meshes().refusal("d.stl"))
                .contains("it is not an ordinary file")
                .endsWith("[mesh-unreadable]");
        assertThat(meshes().refusal("none.stl"))
                .isEqualTo(
                        "l.yaml:3:7: mesh file 'none.stl': there is no such file beside the layout [mesh-unreadable]");
        assertThat(meshes().refusal("no\0name.stl")).endsWith("[mesh-unreadable]");
    }
}
