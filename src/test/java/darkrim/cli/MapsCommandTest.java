package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.Outside;
import java.awt.image.BufferedImage;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import nom.tam.fits.Fits;
import nom.tam.fits.ImageHDU;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class MapsCommandTest {
    private static final String LAYOUT = "geometries/nightglow-b.yaml";

    @TempDir
    Path folder;

    private Path at(String name) {
        return folder.resolve(name);
    }

    private Run maps(String... more) {
        List<String> all = new ArrayList<>(List.of("maps", LAYOUT, "--cells-along", "6", "--cell-samples", "256"));
        all.addAll(List.of(more));
        return Run.of(all.toArray(String[]::new));
    }

    static List<CSVRecord> records(Path file) throws Exception {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return format.parse(new StringReader(Files.readString(file))).getRecords();
    }

    /** Means of maps against what a check finds of the surface by other samples. */
    @Test
    void meansOfMapsAreThoseOfACheckAndAllFilesAgree() throws Exception {
        Run run = maps(
                "--onto",
                "mosaic/die[1,2]/active",
                "-o",
                at("m.fits").toString(),
                "-o",
                at("m.csv").toString());
        assertThat(run.code()).as(run.errors()).isZero();
        Run.of(
                "check",
                LAYOUT,
                "--margins",
                "none",
                "--seed",
                "5",
                "--json",
                at("c.json").toString());
        JsonNode checked = JsonMapper.builder().build().readTree(Files.readString(at("c.json")));
        double expected = 0;
        double error = 0;
        for (JsonNode surface : checked.get("surfaces")) {
            if (surface.get("name").asString().equals("mosaic/die[1,2]/active")) {
                expected = surface.get("once_reflected").get("mean").asDouble();
                error = surface.get("once_reflected").get("standard_error").asDouble();
            }
        }
        assertThat(expected).isPositive();
        try (Fits fits = new Fits(at("m.fits").toFile())) {
            fits.read();
            assertThat(fits.getNumberOfHDUs()).isEqualTo(1 + 2 * 2);
            ImageHDU reflected = (ImageHDU) fits.getHDU(3);
            double[][] values = (double[][]) reflected.getKernel();
            double[][] errors = (double[][]) ((ImageHDU) fits.getHDU(4)).getKernel();
            double sum = 0;
            double squares = 0;
            for (int row = 0; row < 6; row++) {
                for (int column = 0; column < 6; column++) {
                    sum += values[row][column] / 36;
                    squares += errors[row][column] * errors[row][column] / 36 / 36;
                }
            }
            assertThat(sum).isCloseTo(reflected.getHeader().getDoubleValue("MEANVAL"), within(1e-12 * sum));
            // By chance once in 16,000.
            assertThat(sum).isCloseTo(expected, within(4 * Math.sqrt(squares + error * error)));
            List<CSVRecord> lines = records(at("m.csv"));
            assertThat(lines).hasSize(2 * 36);
            for (CSVRecord line : lines) {
                if (line.get("light").equals("once-reflected light")) {
                    int column = Integer.parseInt(line.get("column")) - 1;
                    int row = Integer.parseInt(line.get("row")) - 1;
                    assertThat(Double.parseDouble(line.get("relative irradiance")))
                            .isEqualTo(values[row][column]);
                    assertThat(Double.parseDouble(line.get("x [mm]")))
                            .isCloseTo(
                                    reflected.getHeader().getDoubleValue("CRVAL1")
                                            + column * reflected.getHeader().getDoubleValue("CDELT1"),
                                    within(1e-9));
                    assertThat(Double.parseDouble(line.get("y [mm]")))
                            .isCloseTo(
                                    reflected.getHeader().getDoubleValue("CRVAL2")
                                            + row * reflected.getHeader().getDoubleValue("CDELT2"),
                                    within(1e-9));
                }
            }
        }
    }

    /** Read card by card, without any library: FITS 4.0, section 4.4. */
    @Test
    void everyHeaderHasTheKeywordsOfTheStandard() throws Exception {
        assertThat(maps(
                                "--onto",
                                "mosaic/die[1,1]/{active,edge/+x}",
                                "--light",
                                "direct",
                                "-o",
                                at("m.fits").toString())
                        .code())
                .isZero();
        byte[] file = Files.readAllBytes(at("m.fits"));
        assertThat(file.length % 2880).isZero();
        // No time in it: the library would write one.
        assertThat(new String(file, 0, 80, StandardCharsets.US_ASCII).stripTrailing())
                .isEqualTo("SIMPLE  =                    T / file conforms to the FITS standard");
        Map<String, String> cards = new LinkedHashMap<>();
        int images = 0;
        for (int from = 0; from + 80 <= file.length; from += 80) {
            String card = new String(file, from, 80, StandardCharsets.ISO_8859_1);
            if (card.startsWith("XTENSION= 'IMAGE   '")) {
                images++;
                cards.clear();
            }
            if (card.startsWith("=", 8)) {
                cards.put(
                        card.substring(0, 8).strip(),
                        card.substring(10).split(" /", -1)[0].strip());
            }
            if (images > 0 && card.startsWith("END     ")) {
                assertThat(cards)
                        .containsEntry("BITPIX", "-64")
                        .containsEntry("NAXIS", "2")
                        .containsEntry("PCOUNT", "0");
                assertThat(cards).containsEntry("GCOUNT", "1").containsKeys("BUNIT", "EXTNAME", "SURFACE");
                assertThat(cards.get("CUNIT1")).startsWith("'mm");
                assertThat(cards.get("CTYPE1")).matches("'[XYZ] *'");
                assertThat(cards.get("CTYPE2")).matches("'[XYZ] *'");
                assertThat(cards).containsKeys("CRPIX1", "CRVAL1", "CDELT1", "CRPIX2", "CRVAL2", "CDELT2");
                images = images == 4 ? 0 : images;
                cards.clear();
            }
        }
    }

    @Test
    void cfitsioFindsNothingWrongWithTheFits() throws Exception {
        Assumptions.assumeTrue(Outside.has("sh", "-c", "command -v fitsverify"), "fitsverify is not installed");
        assertThat(maps("--onto", "mosaic/die[1,1]/active", "-o", at("m.fits").toString())
                        .code())
                .isZero();
        Outside.Said said = Outside.run(List.of("fitsverify", "-l", at("m.fits").toString()));
        assertThat(said.text()).contains("Verification found 0 warning(s) and 0 error(s)");
    }

    /** Astropy's arrays, axes and units; the coordinates of the middle of the active area are those of the layout. */
    @Test
    void astropyReadsValuesAndCoordinates() throws Exception {
        assertThat(maps("--onto", "mosaic/die[2,2]/active", "-o", at("m.fits").toString())
                        .code())
                .isZero();
        String read = Outside.python("astropy", """
                import sys
                from astropy.io import fits
                from astropy.wcs import WCS
                f = fits.open(sys.argv[1])
                f.verify('exception')
                h = f[1]
                w = WCS(h.header)
                x, y = w.pixel_to_world_values(2.5, 2.5)
                k = 1000 if str(w.wcs.cunit[0]) == 'm' else 1
                print(x * k, y * k, h.data.mean(), h.header['MEANVAL'], f['MAP1-DIRECT-ERROR'].data.shape)
                """, at("m.fits").toString());
        String[] words = read.strip().split(" ", 5);
        assertThat(Double.parseDouble(words[0])).isCloseTo(20.1, within(1e-9));
        assertThat(Double.parseDouble(words[1])).isCloseTo(20.1, within(1e-9));
        assertThat(Double.parseDouble(words[2])).isCloseTo(Double.parseDouble(words[3]), within(1e-12));
        assertThat(words[4]).isEqualTo("(6, 6)");
    }

    @Test
    void greyIsLinearUpToTheValueThatTheFileNames() throws Exception {
        Run run = maps(
                "--onto",
                "mosaic/die[1,2]/active",
                "--light",
                "direct",
                "-o",
                at("m.png").toString(),
                "-o",
                at("m.csv").toString());
        assertThat(run.code()).as(run.errors()).isZero();
        BufferedImage picture = ImageIO.read(at("m.png").toFile());
        assertThat(picture.getSampleModel().getSampleSize(0)).isEqualTo(16);
        String chunks = new String(Files.readAllBytes(at("m.png")), StandardCharsets.ISO_8859_1);
        String white = chunks.split("White\0", 2)[1].replaceFirst("(?s)[^0-9.E-].*", "");
        List<CSVRecord> lines = records(at("m.csv"));
        double greatest = lines.stream()
                .mapToDouble(line -> Double.parseDouble(line.get("relative irradiance")))
                .max()
                .orElseThrow();
        assertThat(white).startsWith(Double.toString(greatest));
        for (CSVRecord line : lines) {
            int grey = picture.getRaster()
                    .getSample(Integer.parseInt(line.get("column")) - 1, 6 - Integer.parseInt(line.get("row")), 0);
            assertThat(grey / 65535.0 * greatest)
                    .isCloseTo(Double.parseDouble(line.get("relative irradiance")), within(greatest / 65535));
        }
    }

    @Test
    void whatCannotBeWrittenIsSaidAtOnceAndNothingIs() throws Exception {
        Files.writeString(at("mine.csv"), "mine");
        Run run = maps(
                "--onto",
                "mosaic/**/active",
                "-o",
                at("a.png").toString(),
                "-o",
                at("b.txt").toString(),
                "-o",
                at("mine.csv").toString());
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .contains("a PNG holds one map", "expected a name that ends in", "--overwrite replaces it")
                .doesNotContain("\tat ");
        assertThat(folder.toFile().list()).containsExactly("mine.csv");
        assertThat(at("mine.csv")).hasContent("mine");
        Run curved = Run.of(
                "maps",
                "geometries/part-sphere-cap.yaml",
                "--onto",
                "**",
                "-o",
                at("c.csv").toString());
        assertThat(curved.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(curved.errors()).contains("not flat, expected flat surfaces only");
    }

    @Test
    void threadsDoNotChangeAFile() throws Exception {
        maps(
                "--onto",
                "mosaic/die[1,1]/active",
                "--threads",
                "1",
                "-o",
                at("1.fits").toString());
        maps(
                "--onto",
                "mosaic/die[1,1]/active",
                "--threads",
                "2",
                "-o",
                at("2.fits").toString());
        assertThat(at("1.fits")).hasSameBinaryContentAs(at("2.fits"));
    }
}
