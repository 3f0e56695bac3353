package darkrim.hard;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.mesh.MeshFiles;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Changed mesh files: text and binary STL, OBJ. The first byte of an input says by which end of its name the file is read. */
final class MeshTrial implements Trial {
    private final Path folder;
    private final Corpus corpus;

    /**
     * @param folder where the files go
     */
    MeshTrial(Path folder) throws IOException {
        this.folder = folder;
        List<Path> from = List.of(Path.of("geometries"), Path.of("src/test/resources/meshes"));
        List<byte[]> files = new ArrayList<>(Corpus.of(from, ".stl").files());
        files.addAll(Corpus.of(from, ".obj").files());
        for (int facets : new int[] {0, 1, 12, 40}) {
            files.add(binary(facets));
        }
        files.add("v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\nvt 0 0\nvn 0 0 1\no a\ng b\nusemtl c\nf 1/1/1 2//1 -2 -1\n"
                .getBytes(StandardCharsets.UTF_8));
        corpus = new Corpus(files);
    }

    private static byte[] binary(int facets) {
        ByteBuffer bytes = ByteBuffer.allocate(84 + 50 * facets).order(ByteOrder.LITTLE_ENDIAN);
        bytes.putInt(80, facets);
        for (int i = 0; i < facets; i++) {
            for (int k = 0; k < 9; k++) {
                bytes.putFloat(84 + 50 * i + 12 + 4 * k, (i * 7 + k * k) % 5);
            }
        }
        return bytes.array();
    }

    @Override
    public String name() {
        return "meshes";
    }

    @Override
    public byte[] input(SplittableRandom random) {
        byte[] changed = new Mutation(random).of(corpus.any(random), corpus.any(random));
        ByteBuffer input = ByteBuffer.allocate(changed.length + 1).order(ByteOrder.LITTLE_ENDIAN);
        input.put((byte) (random.nextInt(3) == 0 ? 'o' : 's')).put(changed);
        // A header that agrees with the length lets the facets be read.
        if (changed.length >= 84 && random.nextInt(3) == 0) {
            input.putInt(81, (changed.length - 84) / 50);
        }
        return input.array();
    }

    @Override
    public End read(byte[] input) throws IOException {
        String name = input[0] == 'o' ? "fuzzed.obj" : "fuzzed.stl";
        Path file = folder.resolve(name);
        Files.write(file, java.util.Arrays.copyOfRange(input, 1, input.length));
        Findings findings = new Findings();
        boolean read = MeshFiles.beside(folder.resolve("fuzzed.yaml").toString())
                .read(name, false, new Place("fuzzed.yaml", 1, 1), findings)
                .isPresent();
        LayoutTrial.requireShown(findings.sorted());
        if (read == findings.hasErrors()) {
            throw new AssertionError("neither read nor refused: " + findings.sorted());
        }
        return read ? End.USED : End.REFUSED;
    }
}
