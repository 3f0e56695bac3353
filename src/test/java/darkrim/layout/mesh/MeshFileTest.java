package darkrim.layout.mesh;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whatever a mesh file holds, it is read or refused with the place of the mistake, within bounded time and memory. */
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class MeshFileTest {
    private static final String FACET =
            "facet normal 0 0 1\n outer loop\n  vertex 0 0 0\n  vertex 1 0 0\n  vertex 0 1 0\n endloop\nendfacet\n";

    @TempDir
    private Path folder;

    private Optional<MeshFile> read(String name, boolean anywhere, Findings findings) {
        MeshFiles files = MeshFiles.beside(folder.resolve("l.yaml").toString());
        return files.read(name, anywhere, new Place("l.yaml", 3, 7), findings);
    }

    private MeshFile good(String name, String content) throws IOException {
        Files.writeString(folder.resolve(name), content);
        Findings findings = new Findings();
        Optional<MeshFile> file = read(name, false, findings);
        assertThat(findings.sorted()).isEmpty();
        return file.orElseThrow();
    }

    private String refusal(String name) {
        Findings findings = new Findings();
        assertThat(read(name, false, findings)).isEmpty();
        List<Finding> all = findings.sorted();
        assertThat(all).hasSize(1);
        return all.get(0).toString().replace(folder + "/", "");
    }

    private String refusal(String name, byte[] content) throws IOException {
        Files.write(folder.resolve(name), content);
        return refusal(name);
    }

    private String refusal(String name, String content) throws IOException {
        return refusal(name, content.getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] binary(int stated, float... coordinates) {
        int facets = coordinates.length / 9;
        ByteBuffer bytes = ByteBuffer.allocate(84 + 50 * facets).order(ByteOrder.LITTLE_ENDIAN);
        bytes.put("solid by a program that lies".getBytes(StandardCharsets.US_ASCII));
        bytes.position(80).putInt(stated);
        for (int f = 0; f < facets; f++) {
            bytes.putFloat(0).putFloat(0).putFloat(0);
            for (int i = 0; i < 9; i++) {
                bytes.putFloat(coordinates[9 * f + i]);
            }
            bytes.putShort((short) 0);
        }
        return bytes.array();
    }

    @Test
    void aTextFileMayHaveSeveralSolidsEachAGroup() throws IOException {
        MeshFile file = good(
                "a.stl", "solid lid/one\n" + FACET + "endsolid lid\n\n  solid wall\n" + FACET + FACET + "endsolid\n");
        assertThat(file.mesh().facetCount()).isEqualTo(3);
        assertThat(file.mesh().groups()).extracting("name").containsExactly("lid_one", "wall");
    }

    @Test
    void theNameOfAnOnlySolidDoesNotCountAndNormalsAreNotRead() throws IOException {
        MeshFile file = good(
                "a.stl",
                "SOLID exported 2026\n" + FACET.replace("0 0 1\n outer", "nan -nan inf\n outer") + "endsolid\n");
        assertThat(file.mesh().groups()).extracting("name").containsExactly("");
    }

    @Test
    void aBinaryFileThatBeginsWithTheWordSolidIsReadAsBinary() throws IOException {
        Files.write(folder.resolve("b.stl"), binary(1, 0, 0, 0, 60.1f, 0, 0, 0, 0.05f, 0));
        MeshFile file = read("b.stl", false, new Findings()).orElseThrow();
        assertThat(file.mesh().facetCount()).isEqualTo(1);
        // The decimal that the float stands for, not the float.
        assertThat(file.mesh().coordinate(1, 0)).isEqualTo(60.1);
        assertThat(file.mesh().coordinate(2, 1)).isEqualTo(0.05);
    }

    @ParameterizedTest
    @CsvSource({"60.1", "-19.94925", "0.000123", "1e-7", "123456.7", "3.4e38", "1.1754944e-38", "0", "16777216"})
    void theDecimalOfAFloatIsThatFloatAgain(float written) {
        double decimal = BinaryStl.decimal(written);
        assertThat((float) decimal).isEqualTo(written);
    }

    @Test
    void objFilesHaveGroupsMaterialsPolygonsAndNegativeNumbers() throws IOException {
        MeshFile file = good("c.obj", """
                # a square and an L
                v 0 0 0
                v 1 0 0
                v 1 1 0
                v 0 1 0
                o plate
                usemtl Black Oxide
                f 1 2 3 4
                g edge
                v 3 0 0
                v 5 0 0
                v 5 1 0
                v 4 1 0
                v 4 2 0
                v 3 2 0
                f -6/1/1 -5 -4 \\
                   -3 -2 -1
                vt 0 0
                s off
                """.replace("f -6/1/1", "f -6"));
        assertThat(file.mesh().groups())
                .extracting("name", "material")
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("plate", "Black Oxide"),
                        org.assertj.core.groups.Tuple.tuple("edge", "Black Oxide"));
        assertThat(file.mesh().facetCount()).isEqualTo(6);
        // 1 for the square, 3 for the L: 2 x 1 and 1 x 1.
        assertThat(file.mesh().area()).isEqualTo(4);
        for (int f = 0; f < 6; f++) {
            assertThat(file.mesh().doubledNormal(f).getZ()).isPositive();
        }
    }

    @Test
    void aBinaryFileThatIsCutOffOrLiesAboutItsNumberIsRefused() throws IOException {
        byte[] whole = binary(1, 0, 0, 0, 1, 0, 0, 0, 1, 0);
        byte[] cut = java.util.Arrays.copyOf(whole, 120);
        assertThat(refusal("cut.stl", cut))
                .isEqualTo("cut.stl: byte 80: the header states 1 facets, which take 134 bytes, but the file has 120:"
                        + " it is cut off, or no STL file, expected a whole one [mesh-form]");
        assertThat(refusal("lie.stl", binary(1_000_000, 0, 0, 0, 1, 0, 0, 0, 1, 0)))
                .isEqualTo("lie.stl: byte 80: the header states 1000000 facets, which take 50000084 bytes, but the file"
                        + " has 134: it is cut off, or no STL file, expected a whole one [mesh-form]");
        assertThat(refusal("more.stl", binary(-1, 0, 0, 0, 1, 0, 0, 0, 1, 0))).contains("states 4294967295 facets");
        assertThat(refusal("short.stl", new byte[20])).contains("the file has 20 bytes and no word 'solid'");
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
        assertThat(refusal("huge.stl"))
                .isEqualTo("huge.stl: byte 80: the file has 4000001 facets, expected at most 4000000 [mesh-too-large]");
    }

    @Test
    void numbersThatAreNoneAreNamedByByteOrLine() throws IOException {
        assertThat(refusal("n.stl", binary(2, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 0, 1, Float.NaN, 0, 0, 1, 0)))
                .isEqualTo("n.stl: byte 134: facet 2 has a corner that is not finite, expected numbers [mesh-value]");
        assertThat(refusal("n2.stl", "solid a\n" + FACET.replace("1 0 0", "nan 0 0") + "endsolid\n"))
                .startsWith("n2.stl:5:")
                .endsWith("[mesh-form]");
        assertThat(refusal("n3.stl", "solid a\n" + FACET.replace("1 0 0", "1e999 0 0") + "endsolid\n"))
                .startsWith("n3.stl:")
                .endsWith("is not finite, expected numbers [mesh-value]");
        assertThat(refusal("n.obj", "v 0 0 0\nv 1e999 0 0\nv 0 1 0\nf 1 2 3\n"))
                .isEqualTo("n.obj:2:1: this point is not finite, expected numbers [mesh-value]");
    }

    @Test
    void textIsRefusedAtLineAndColumn() throws IOException {
        assertThat(refusal("a.stl", "solid a\n" + FACET + FACET.replace("vertex 1", "vertx 1") + "endsolid\n"))
                .isEqualTo("a.stl:12:3: expected [vertex] but found [vertx] [mesh-form]");
        // The place counts from the beginning of the file, whichever solid it is in.
        assertThat(refusal(
                        "b.stl",
                        "solid a\n" + FACET + "endsolid a\nsolid b\n" + FACET.replace("endloop", "end") + "endsolid\n"))
                .startsWith("b.stl:16:2: ");
        assertThat(refusal("c.stl", "solid a\n" + FACET))
                .startsWith("c.stl:9:1: ")
                .endsWith("[mesh-form]");
        assertThat(refusal("d.stl", "")).contains("the file has 0 bytes and no word 'solid'");
        assertThat(refusal("e.stl", "solid a\n" + FACET + "endsolid\nrubbish\n"))
                .startsWith("e.stl:10:1: ")
                .endsWith("[mesh-form]");
    }

    @ParameterizedTest
    @CsvSource({"9, 4:7", "0, 4:7", "-4, 4:7", "x, 4:7", "99999999999, 4:7"})
    void aCornerThatDoesNotExistIsNamed(String number, String place) throws IOException {
        assertThat(refusal("i.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 " + number + "\n"))
                .startsWith("i.obj:" + place + ": ")
                .endsWith("[mesh-form]");
    }

    @Test
    void polygonsThatCannotBeSplitAreNamedByLine() throws IOException {
        String points = "v 0 0 0\nv 2 2 0\nv 2 0 0\nv 0 2 0\nv 1 3 0\n";
        assertThat(refusal("p.obj", points + "f 1 2 3 4 5\n"))
                .startsWith("p.obj:6:1: this face cannot be split into triangles: ");
        assertThat(refusal("q.obj", "v 0 0 0\nv 1 0 0\nv 2 1 1\nv 1 2 0\nv 0 1 1\nf 1 2 3 4 5\n"))
                .isEqualTo(
                        "q.obj:6:1: this face cannot be split into triangles: a face of 5 corners is not flat, expected a flat face with corners in order [mesh-form]");
        assertThat(refusal("r.obj", "v 0 0 0\n"))
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
        assertThat(refusal("long.stl"))
                .isEqualTo("long.stl:2:1: a line has more than 1000 characters, expected fewer [mesh-form]");
        assertThat(refusal("long.obj"))
                .startsWith("long.obj:1:")
                .endsWith("[mesh-form]")
                .hasSizeLessThan(300);
    }

    /**
     * A parser may know the word endsolid before the rest of its line is taken, where its buffer ends within that line: these solids end at
     * every eighth place of the first 8,000 characters, with an end longer than that.
     */
    @Test
    void noSolidIsLostWhereverItEnds() throws IOException {
        StringBuilder text = new StringBuilder();
        int all = 0;
        for (int length = 0; length < 8000; length += 8) {
            int facets = 1 + length / FACET.length();
            String name = "x".repeat(1 + length % FACET.length());
            text.append("solid ").append(name).append('\n').append(FACET.repeat(facets));
            text.append("endsolid of a name that is long\n");
            all += facets;
        }
        MeshFile file = good("many.stl", text.toString());
        assertThat(file.mesh().facetCount()).isEqualTo(all);
    }

    @Test
    void packedFilesAndOtherFormatsAreRefused() throws IOException {
        assertThat(refusal("z.stl", new byte[] {'P', 'K', 3, 4, 0, 0})).contains("the file is packed (zip)");
        assertThat(refusal("z.obj", new byte[] {0x1f, (byte) 0x8b, 8, 0})).contains("the file is packed (gzip)");
        assertThat(refusal("x.step", "ISO-10303-21;")).contains("the name ends in none of .stl, .obj, .step and .stp");
        assertThat(refusal("b.obj", new byte[] {'v', ' ', 0, 1, 2})).contains("the file is not text");
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
        assertThat(refusal("d.stl")).contains("it is not an ordinary file").endsWith("[mesh-unreadable]");
        assertThat(refusal("none.stl"))
                .isEqualTo(
                        "l.yaml:3:7: mesh file 'none.stl': there is no such file beside the layout [mesh-unreadable]");
        assertThat(refusal("no\0name.stl")).endsWith("[mesh-unreadable]");
    }

    @Test
    void whatWasReadArrivesOnAnotherMachine() throws IOException, ClassNotFoundException {
        Files.writeString(folder.resolve("sent.obj"), "o a\nusemtl m\nv 0 0 0.1\nv 1 0 0\nv 0 1 0\nf 1 2 3\n");
        MeshFiles files = MeshFiles.beside(folder.resolve("l.yaml").toString());
        MeshFile sent =
                files.read("sent.obj", false, Place.IN_CODE, new Findings()).orElseThrow();
        var bytes = new java.io.ByteArrayOutputStream();
        try (var out = new java.io.ObjectOutputStream(bytes)) {
            out.writeObject(files);
        }
        Files.delete(folder.resolve("sent.obj"));
        MeshFiles arrived;
        try (var in = new java.io.ObjectInputStream(new java.io.ByteArrayInputStream(bytes.toByteArray()))) {
            arrived = (MeshFiles) in.readObject();
        }
        MeshFile again =
                arrived.read("sent.obj", false, Place.IN_CODE, new Findings()).orElseThrow();
        assertThat(again.sha256()).isEqualTo(sent.sha256()).hasSize(64);
        assertThat(again.mesh().groups()).isEqualTo(sent.mesh().groups());
        assertThat(again.mesh().area()).isEqualTo(sent.mesh().area());
        assertThat(again.mesh().coordinate(0, 2)).isEqualTo(0.1);
    }

    @Test
    void aFileIsReadOnceHoweverManyPartsNameIt() throws IOException {
        Files.writeString(folder.resolve("once.stl"), "solid a\n" + FACET + "endsolid\n");
        MeshFiles files = MeshFiles.beside(folder.resolve("l.yaml").toString());
        MeshFile first =
                files.read("once.stl", false, Place.IN_CODE, new Findings()).orElseThrow();
        Files.delete(folder.resolve("once.stl"));
        MeshFile second =
                files.read("once.stl", false, Place.IN_CODE, new Findings()).orElseThrow();
        assertThat(second).isSameAs(first);
    }
}
