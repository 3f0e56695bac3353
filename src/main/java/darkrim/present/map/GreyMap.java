package darkrim.present.map;

import darkrim.layout.Layout;
import darkrim.present.LayoutWords;
import darkrim.present.Printable;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A map as a PNG picture of 16 bits of grey, a pixel for each cell, the last row on top. Grey is linear from 0, black, to the greatest value, 65535; text
 * chunks tell that value and what the picture is of. Cells beside the surface are black.
 */
public final class GreyMap {
    private static final int WHITE = 65_535;
    private static final String FORMAT = "javax_imageio_png_1.0";

    private GreyMap() {}

    /** The greatest value of a map, in its unit; 0 where none is known. */
    public static double greatest(LightMap map) {
        double greatest = 0;
        for (int row = 0; row < map.grid().rows(); row++) {
            for (int column = 0; column < map.grid().columns(); column++) {
                double value = map.value(column, row);
                greatest = value > greatest ? value : greatest;
            }
        }
        return greatest;
    }

    /** The picture. */
    public static byte[] of(LightMap map, Layout layout, long seed, String version) {
        int columns = map.grid().columns();
        int rows = map.grid().rows();
        BufferedImage picture = new BufferedImage(columns, rows, BufferedImage.TYPE_USHORT_GRAY);
        double greatest = greatest(map);
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                double value = map.value(column, row);
                int grey = value > 0 ? (int) Math.round(value / greatest * WHITE) : 0;
                picture.getRaster().setSample(column, rows - 1 - row, 0, grey);
            }
        }
        Map<String, String> words = new LinkedHashMap<>();
        words.put("Title", LayoutWords.title(layout));
        words.put("Software", "Darkrim " + version + ", seed " + seed);
        words.put("Source", LayoutWords.file(layout));
        words.put("Surface", map.surface());
        words.put("Light", map.kind().words());
        words.put("Quantity", map.unit().quantity());
        words.put("Unit", map.unit().unit().isEmpty() ? "1" : map.unit().unit());
        words.put("Black", "0");
        words.put("White", Double.toString(greatest));
        words.put("Axes", "right " + map.axis(LightMap.Side.COLUMNS) + ", up " + map.axis(LightMap.Side.ROWS));
        words.put("Cell mm", map.step(LightMap.Side.COLUMNS) + " x " + map.step(LightMap.Side.ROWS));
        words.put("Lower left mm", map.grid().origin().toString());
        return written(picture, words);
    }

    private static byte[] written(BufferedImage picture, Map<String, String> words) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            IIOMetadata metadata =
                    writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(picture), null);
            metadata.mergeTree(FORMAT, chunks(words));
            writer.setOutput(out);
            writer.write(new IIOImage(picture, null, metadata));
        } catch (IIOInvalidTreeException impossible) {
            throw new IllegalStateException("the writer of PNG takes its own text chunks", impossible);
        } catch (IOException impossible) {
            throw new IllegalStateException("writing to memory failed", impossible);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    private static IIOMetadataNode chunks(Map<String, String> words) {
        IIOMetadataNode text = new IIOMetadataNode("tEXt");
        words.forEach((key, value) -> {
            IIOMetadataNode entry = new IIOMetadataNode("tEXtEntry");
            entry.setAttribute("keyword", key);
            // The chunk holds Latin-1 only.
            entry.setAttribute("value", Printable.of(value).replaceAll("[^\\x20-\\x7e]", "?"));
            text.appendChild(entry);
        });
        IIOMetadataNode root = new IIOMetadataNode(FORMAT);
        root.appendChild(text);
        return root;
    }
}
