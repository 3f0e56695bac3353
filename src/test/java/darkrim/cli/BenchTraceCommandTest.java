package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The comparison of ray kernels reads and writes what it says. */
class BenchTraceCommandTest {
    private static final double ALL = Double.POSITIVE_INFINITY;

    @TempDir
    Path folder;

    @Test
    void facetsAndDistancesAreWrittenForEveryRay() throws IOException {
        // Two triangles across the z axis, at heights 2 and 5.
        write("scene", -1, -1, 2, 1, -1, 2, 0, 2, 2, -1, -1, 5, 1, -1, 5, 0, 2, 5);
        write(
                "rays", 0, 0, 0, 0, 0, 1, 0, ALL, 0, 0, 0, 0, 0, 2, 0, ALL, 0, 0, 0, 0, 0, 1, 3, ALL, 0, 0, 0, 0, 0, 1,
                0, 1.5, 9, 0, 0, 0, 0, 1, 0, ALL);
        Run run = bench("scene", "rays");
        assertThat(run.code()).isZero();
        assertThat(run.output()).contains("5 rays, 3 of them blocked", "nearest ", "million rays/s");
        ByteBuffer met =
                ByteBuffer.wrap(Files.readAllBytes(folder.resolve("out"))).order(ByteOrder.LITTLE_ENDIAN);
        assertThat(met.remaining()).isEqualTo(5 * 12);
        int[] facets = new int[5];
        double[] distances = new double[5];
        met.asIntBuffer().get(facets);
        met.position(20);
        met.asDoubleBuffer().get(distances);
        assertThat(facets).containsExactly(0, 0, 1, -1, -1);
        // Twice as long a direction halves the distance; behind a least distance of 3 only the second facet is left.
        assertThat(distances).containsExactly(2, 1, 5, ALL, ALL);
    }

    @Test
    void everyFileThatCannotBeUsedIsNamedAndNothingIsWritten() throws IOException {
        write("scene", 1, 2, 3);
        write("rays", 0, 0, 0, 0, 0, 0, 0, 1);
        Run run = bench("scene", "rays");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errors()).contains("24 bytes, expected 72 for each facet", "ray 0 cannot be traced");
        assertThat(folder.resolve("out")).doesNotExist();
        write("scene", -1, -1, 2, 1, -1, 2, 0, Double.NaN, 2);
        assertThat(bench("scene", "missing").errors()).contains("facet 0 has the coordinate NaN", "cannot be read");
    }

    private Run bench(String scene, String rays) {
        return Run.of(
                "bench-trace",
                folder.resolve(scene).toString(),
                folder.resolve(rays).toString(),
                folder.resolve("out").toString());
    }

    private void write(String name, double... numbers) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(8 * numbers.length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asDoubleBuffer().put(numbers);
        Files.write(folder.resolve(name), bytes.array());
    }
}
