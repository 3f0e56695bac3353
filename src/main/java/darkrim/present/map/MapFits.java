package darkrim.present.map;

import darkrim.layout.Layout;
import darkrim.present.Printable;
import darkrim.present.map.LightMap.Side;
import darkrim.study.irradiance.DarkProof;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import nom.tam.fits.BasicHDU;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;
import nom.tam.fits.Header;
import nom.tam.fits.NullDataHDU;
import nom.tam.util.FitsOutputStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Maps as one FITS file (FITS 4.0): after a header without data an image of double precision for each map, each followed by an image of its standard
 * errors. Axes are linear, in mm; cells beside the outline of a surface are NaN. No clock is read.
 */
public final class MapFits {
    /** Letters of a card. */
    private static final int CARD = 80;

    private static final String FIRST_CARD = "SIMPLE  =                    T / file conforms to the FITS standard";

    private MapFits() {}

    /**
     * The file.
     *
     * @param maps the maps, one image each
     * @param layout the layout that they are of
     * @param seed seed of the samples
     * @param version version of the program
     */
    public static byte[] of(List<LightMap> maps, Layout layout, long seed, String version) {
        try (Fits fits = new Fits()) {
            BasicHDU<?> head = new NullDataHDU();
            fits.addHDU(head);
            Header primary = head.getHeader();
            longWords(primary);
            text(primary, "ORIGIN", "Darkrim " + version, "program that made the file");
            text(primary, "TITLE", layout.title(), "title of the layout");
            text(primary, "REVISION", layout.revision(), "revision of the layout");
            text(primary, "LAYOUT", layout.source().name(), "file of the layout");
            text(primary, "SHA256", layout.source().sha256(), "hash of the layout and its files");
            primary.addValue("SEED", seed, "seed of the samples");
            layout.temperature().ifPresent(kelvin -> primary.addValue("TEMPERAT", kelvin, "[K] of the shape"));
            int number = 1;
            for (LightMap map : maps) {
                String name = "MAP" + number++ + "-" + map.kind().name().replace('_', '-');
                BasicHDU<?> values = image(map, false);
                BasicHDU<?> errors = image(map, true);
                fits.addHDU(values);
                fits.addHDU(errors);
                describe(values.getHeader(), map, name);
                describe(errors.getHeader(), map, name + "-ERROR");
                text(values.getHeader(), "ERREXT", name + "-ERROR", "extension with the standard errors");
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (FitsOutputStream out = new FitsOutputStream(bytes)) {
                fits.write(out);
            }
            return undated(bytes.toByteArray());
        } catch (FitsException | IOException impossible) {
            throw new IllegalStateException("writing to memory failed", impossible);
        }
    }

    /** The library writes the time into the remark of the first card; the same maps are to make the same bytes. */
    private static byte[] undated(byte[] file) {
        byte[] card = FIRST_CARD.getBytes(StandardCharsets.US_ASCII);
        Arrays.fill(file, 0, CARD, (byte) ' ');
        System.arraycopy(card, 0, file, 0, card.length);
        return file;
    }

    private static BasicHDU<?> image(LightMap map, boolean errors) throws FitsException {
        double[][] data = new double[map.grid().rows()][map.grid().columns()];
        for (int row = 0; row < data.length; row++) {
            for (int column = 0; column < data[row].length; column++) {
                data[row][column] = errors ? map.error(column, row) : map.value(column, row);
            }
        }
        return Fits.makeHDU(data);
    }

    private static void describe(Header header, LightMap map, String name) throws FitsException {
        longWords(header);
        text(header, "EXTNAME", name, "name of this image");
        text(header, "SURFACE", map.surface(), "surface of the layout");
        text(header, "LIGHT", map.kind().words(), "which light");
        text(header, "QUANTITY", map.unit().quantity(), "what the values are");
        text(header, "BUNIT", map.unit().unit().replace("W/m2", "W m-2"), "unit of the values; blank: a ratio");
        axis(header, map, Side.COLUMNS, 1);
        axis(header, map, Side.ROWS, 2);
        Vector3D corner = map.middle(0, 0);
        header.addValue("FIRSTX", corner.getX() + 0.0, "[mm] middle of the first cell in the layout");
        header.addValue("FIRSTY", corner.getY() + 0.0, "[mm] likewise");
        header.addValue("FIRSTZ", corner.getZ() + 0.0, "[mm] likewise");
        header.addValue("MEANVAL", finite(map.mean()), "mean over the surface");
        header.addValue("MEANERR", finite(map.meanError()), "standard error of the mean; negative: unknown");
        header.addValue("PROVDARK", map.proof() == DarkProof.PROVED, "whether this light is proved to be none");
        if (map.proof() == DarkProof.BEHIND_FACETS) {
            header.addValue("FACEDARK", true, "none behind the facets only: no proof");
        }
        if (!map.unit().words().isEmpty()) {
            text(header, "RELATIVE", map.unit().words(), "what 1 stands for");
        }
    }

    private static double finite(double value) {
        return Double.isFinite(value) ? value : -1;
    }

    private static void axis(Header header, LightMap map, Side side, int number) {
        Vector3D way = map.direction(side);
        header.addValue("CTYPE" + number, map.axis(side), "linear axis");
        header.addValue("CUNIT" + number, "mm", "unit of the axis");
        header.addValue("CRPIX" + number, 1.0, "the first cell");
        header.addValue("CRVAL" + number, map.first(side) + 0.0, "[mm] at its middle");
        header.addValue("CDELT" + number, map.step(side), "[mm] length of a cell");
        String letter = side == Side.COLUMNS ? "U" : "V";
        header.addValue(letter + "X", way.getX() + 0.0, "direction of axis " + number + " in the layout");
        header.addValue(letter + "Y", way.getY() + 0.0, "likewise");
        header.addValue(letter + "Z", way.getZ() + 0.0, "likewise");
    }

    /** Says that long words go on in CONTINUE cards, as readers from before FITS 4.0 expect to be told. */
    private static void longWords(Header header) throws FitsException {
        header.addValue("LONGSTRN", "OGIP 1.0", "long words go on in CONTINUE cards");
    }

    /** A word of which the format takes every letter: printable ASCII. Long ones go on in CONTINUE cards. */
    private static void text(Header header, String key, String words, String comment) {
        String plain = Printable.of(words).replaceAll("[^\\x20-\\x7e]", "?");
        header.addValue(key.toUpperCase(Locale.ROOT), plain, comment);
    }
}
