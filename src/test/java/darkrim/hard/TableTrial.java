package darkrim.hard;

import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.SideFiles;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.SplittableRandom;

/** Changed tables of measured finishes, beside a layout that uses them. */
final class TableTrial implements Trial {
    private static final String LAYOUT = """
            title: A measured finish
            finishes: {paint: FINISH}
            beam: {pupil: {shape: disc, diameter: 20, distance: 200}}
            parts:
              screen: {kind: rectangle, width: 30, depth: 10, finish: paint}
            requirements:
              dim: {surfaces: screen/front, once_reflected: {at_most: 0.5}}
            """;
    private static final String BRDF = LAYOUT.replace("FINISH", "{brdf_table: table.csv}");
    private static final String REFLECTANCE =
            LAYOUT.replace("FINISH", "{reflectance_table: {as: diffuse, file: table.csv}}");
    private static final byte[] PAINT = """
            # a note
            theta_i_deg,theta_s_deg,phi_s_deg,brdf_per_sr
            5,-80,0,0.012
            5,4,0,0.031
            5,5,0,0.033
            60,60,0,0.091
            """.getBytes(StandardCharsets.UTF_8);
    private static final byte[] COAT = """
            # another
            angle_deg,reflectance
            8,0.041
            45,0.046
            75,0.121
            """.getBytes(StandardCharsets.UTF_8);

    @Override
    public String name() {
        return "finish tables";
    }

    @Override
    public byte[] input(SplittableRandom random) {
        // To find the reflectance of a BRDF takes 10 ms.
        byte[] table = random.nextInt(500) == 0 ? PAINT : COAT;
        return new Mutation(random).of(table, random.nextInt(10) == 0 ? PAINT : COAT);
    }

    @Override
    public End read(byte[] input) {
        boolean coat = new String(input, StandardCharsets.UTF_8).contains("reflectance");
        LayoutReading reading = reading(coat ? REFLECTANCE : BRDF, input);
        LayoutTrial.requireShown(reading.findings());
        return reading.hasErrors() ? End.REFUSED : End.USED;
    }

    private static LayoutReading reading(String layout, byte[] table) {
        SideFiles files = SideFiles.known("fuzzed.yaml", Map.of("table.csv", table));
        return LayoutReader.read("fuzzed.yaml", layout.getBytes(StandardCharsets.UTF_8), Map.of(), files);
    }
}
