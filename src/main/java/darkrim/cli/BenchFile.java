package darkrim.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Files of little-endian 64-bit numbers, some of which make a record. */
final class BenchFile {
    private BenchFile() {}

    /**
     * Reads a file.
     *
     * @param file the file
     * @param numbers numbers in a record
     * @param record what a record is, for messages
     * @param problems receives what is wrong
     * @return the numbers; none where something is wrong
     */
    static double[] read(Path file, int numbers, String record, List<String> problems) {
        try {
            long bytes = Files.size(file);
            if (bytes % (8L * numbers) != 0 || bytes > Integer.MAX_VALUE - 8) {
                problems.add(file + ": " + bytes + " bytes, expected " + 8 * numbers + " for each " + record
                        + " and less than 2 GiB");
                return new double[0];
            }
            double[] content = new double[(int) (bytes / 8)];
            ByteBuffer.wrap(Files.readAllBytes(file))
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .asDoubleBuffer()
                    .get(content);
            return content;
        } catch (IOException refused) {
            problems.add(file + ": the file cannot be read");
            return new double[0];
        }
    }

    /** Notes the first facet with a coordinate that is no finite number. */
    static void checkNumbers(Path file, double[] corners, List<String> problems) {
        for (int i = 0; i < corners.length; i++) {
            if (!Double.isFinite(corners[i])) {
                problems.add(
                        file + ": facet " + i / 9 + " has the coordinate " + corners[i] + ", expected a finite number");
                return;
            }
        }
    }

    /** Notes the first ray that cannot be traced. */
    static void checkRays(Path file, double[] rays, List<String> problems) {
        for (int i = 0; i < rays.length; i += 8) {
            double longest = Math.max(Math.abs(rays[i + 3]), Math.max(Math.abs(rays[i + 4]), Math.abs(rays[i + 5])));
            boolean starts = Double.isFinite(rays[i]) && Double.isFinite(rays[i + 1]) && Double.isFinite(rays[i + 2]);
            // Also false for what is not a number.
            boolean goes = longest >= 1e-100 && longest <= 1e100;
            boolean lasts = rays[i + 6] >= 0 && rays[i + 6] <= 1e100 && rays[i + 7] > rays[i + 6];
            if (!(starts && goes && lasts)) {
                problems.add(file + ": ray " + i / 8
                        + " cannot be traced, expected a finite start, a direction of a length between 1e-100 and 1e100,"
                        + " a least distance of 0 or more and a greater greatest one");
                return;
            }
        }
    }
}
