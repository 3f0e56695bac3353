package darkrim.layout.mesh;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A folder of mesh files beside a layout, read one at a time. */
record MeshFolder(Path folder) {
    static final String FACET =
            "facet normal 0 0 1\n outer loop\n  vertex 0 0 0\n  vertex 1 0 0\n  vertex 0 1 0\n endloop\nendfacet\n";

    Optional<MeshFile> read(String name, boolean anywhere, Findings findings) {
        MeshFiles files = MeshFiles.beside(folder.resolve("l.yaml").toString());
        return files.read(name, anywhere, new Place("l.yaml", 3, 7), findings);
    }

    MeshFile good(String name, String content) throws IOException {
        Files.writeString(folder.resolve(name), content);
        Findings findings = new Findings();
        Optional<MeshFile> file = read(name, false, findings);
        assertThat(findings.sorted()).isEmpty();
        return file.orElseThrow();
    }

    String refusal(String name) {
        Findings findings = new Findings();
        assertThat(read(name, false, findings)).isEmpty();
        List<Finding> all = findings.sorted();
        assertThat(all).hasSize(1);
        return all.get(0).toString().replace(folder + "/", "");
    }

    String refusal(String name, byte[] content) throws IOException {
        Files.write(folder.resolve(name), content);
        return refusal(name);
    }

    String refusal(String name, String content) throws IOException {
        return refusal(name, content.getBytes(StandardCharsets.UTF_8));
    }

    static byte[] binary(int stated, float... coordinates) {
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
}
