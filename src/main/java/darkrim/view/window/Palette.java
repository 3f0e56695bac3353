package darkrim.view.window;

import darkrim.present.picture.ColourScale;
import java.util.HashMap;
import java.util.Map;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.paint.Material;
import javafx.scene.paint.PhongMaterial;

/**
 * Materials that glow in their own colour, so that no lamp changes a colour that stands for a value. A material is a row of colours; each
 * facet takes the one that its mesh names.
 */
final class Palette {
    /** Steps of shading. */
    static final int SHADES = 32;

    private static final Color PART = Color.web("#9aa7b1");
    private static final Color CUT = Color.web("#a3bfa0");

    private final Map<Integer, Material> flat = new HashMap<>();
    private final Map<Integer, Material> lines = new HashMap<>();
    private final Material part = ramp(PART);
    private final Material scale = row(ColourScale.palette());

    /** Grey parts, shaded. */
    Material part() {
        return part;
    }

    /** Cut faces. */
    Material cut() {
        return flat(argb(CUT));
    }

    /** The colours of a scale, in their order. */
    Material scale() {
        return scale;
    }

    /** One colour, whatever the shade. */
    Material flat(int argb) {
        return flat.computeIfAbsent(argb, colour -> {
            WritableImage image = new WritableImage(1, 1);
            image.getPixelWriter().setArgb(0, 0, colour);
            return glowing(image);
        });
    }

    /** One colour for lines, which have no side that could glow. */
    Material line(int argb) {
        return lines.computeIfAbsent(argb, colour -> {
            PhongMaterial material = new PhongMaterial(colour(colour));
            material.setSpecularColor(Color.BLACK);
            return material;
        });
    }

    /** A row of colours, which facets name by their place in it. */
    static Material row(int[] argb) {
        WritableImage image = new WritableImage(argb.length, 1);
        for (int i = 0; i < argb.length; i++) {
            image.getPixelWriter().setArgb(i, 0, argb[i]);
        }
        return glowing(image);
    }

    private static Material ramp(Color colour) {
        int[] row = new int[SHADES];
        for (int i = 0; i < SHADES; i++) {
            double brightness = 0.55 + 0.7 * i / (SHADES - 1.0);
            row[i] = argb(Color.color(
                    Math.min(1, colour.getRed() * brightness),
                    Math.min(1, colour.getGreen() * brightness),
                    Math.min(1, colour.getBlue() * brightness)));
        }
        return row(row);
    }

    private static Material glowing(WritableImage image) {
        PhongMaterial material = new PhongMaterial(Color.BLACK);
        material.setSpecularColor(Color.BLACK);
        material.setSelfIlluminationMap(image);
        return material;
    }

    static int argb(Color colour) {
        return 0xff000000
                | (int) Math.round(255 * colour.getRed()) << 16
                | (int) Math.round(255 * colour.getGreen()) << 8
                | (int) Math.round(255 * colour.getBlue());
    }

    static Color colour(int argb) {
        return Color.rgb(argb >> 16 & 255, argb >> 8 & 255, argb & 255);
    }

    /** A colour for lines that stands out on a face. */
    static int lineOn(int argb) {
        double light = 0.2126 * (argb >> 16 & 255) + 0.7152 * (argb >> 8 & 255) + 0.0722 * (argb & 255);
        return light < 90 ? 0xffaab4bc : 0xff20262b;
    }
}
