package darkrim.layout.mesh;

import static darkrim.layout.mesh.MeshFolder.FACET;
import static darkrim.layout.mesh.MeshFolder.binary;
import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is read from mesh files of each form. */
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class MeshFileTest {
    @TempDir
    private Path folder;

    private MeshFolder meshes() {
        return new MeshFolder(folder);
    }

    @Test
    void aTextFileMayHaveSeveralSolidsEachAGroup() throws IOException {
        MeshFile file = meshes().good(
                        "a.stl",
                        "solid lid/one\n" + FACET + "endsolid lid\n\n  solid wall\n" + FACET + FACET + "endsolid\n");
        assertThat(file.mesh().facetCount()).isEqualTo(3);
        assertThat(file.mesh().groups()).extracting("name").containsExactly("lid_one", "wall");
    }

    @Test
    void theNameOfAnOnlySolidDoesNotCountAndNormalsAreNotRead() throws IOException {
        MeshFile file = meshes().good(
                        "a.stl",
                        "SOLID exported 2026\n" + FACET.replace("0 0 1\n outer", "nan -nan inf\n outer")
                                + "endsolid\n");
        assertThat(file.mesh().groups()).extracting("name").containsExactly("");
    }

    @Test
    void aBinaryFileThatBeginsWithTheWordSolidIsReadAsBinary() throws IOException {
        Files.write(folder.resolve("b.stl"), binary(1, 0, 0, 0, 60.1f, 0, 0, 0, 0.05f, 0));
        MeshFile file = meshes().read("b.stl", false, new Findings()).orElseThrow();
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
        MeshFile file = meshes().good("c.obj", """
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
        MeshFile file = meshes().good("many.stl", text.toString());
        assertThat(file.mesh().facetCount()).isEqualTo(all);
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
