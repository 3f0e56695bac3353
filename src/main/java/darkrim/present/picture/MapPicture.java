package darkrim.present.picture;

import darkrim.present.Figures;
import darkrim.scene.CellGrid;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceMap;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A flat picture of the map of one surface, with its sides in mm and the colours of the scene. */
public final class MapPicture {
    private static final double ALONG_AXIS = 1 - 1e-9;

    private final SurfaceMap map;
    private final CellGrid grid;
    private final LightKind light;
    private final ColourScale scale;
    private final double perRelative;

    /**
     * @param map the map, of a flat surface with a grid of cells
     * @param light which light is shown
     * @param scale the colours
     * @param perRelative what relative values are multiplied with to be in the unit of the scale
     */
    public MapPicture(SurfaceMap map, LightKind light, ColourScale scale, double perRelative) {
        this.map = map;
        this.grid = map.cells().grid().orElseThrow();
        this.light = light;
        this.scale = scale;
        this.perRelative = perRelative;
    }

    /** Mean, least and largest cell in words, with the error of the mean; where geometry says that there is none, that. */
    public String summary() {
        if (light == LightKind.DIRECT && map.proof() != DarkProof.NONE) {
            return map.proof().words();
        }
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int cell : map.cells().filled()) {
            least = Math.min(least, map.value(light, cell) * perRelative);
            most = Math.max(most, map.value(light, cell) * perRelative);
        }
        return "mean " + Figures.withError(map.mean(light) * perRelative, map.meanError(light) * perRelative)
                + ", cells " + RoundNumbers.three(least)
                + " to "
                + RoundNumbers.three(most);
    }

    /** How its sides are drawn. */
    public MapStretch stretch() {
        return MapStretch.of(grid.alongU().norm(), grid.alongV().norm());
    }

    /**
     * Draws it.
     *
     * @param text what is written on it
     * @param width width, pixels
     * @param height height, pixels
     * @return a PNG file
     */
    public byte[] png(PictureText text, int width, int height) {
        return png(text, new Sheet(width, height));
    }

    /**
     * Draws it with larger letters, for pictures that are printed small.
     *
     * @param enlarged how much larger they are
     */
    public byte[] png(PictureText text, int width, int height, double enlarged) {
        return png(text, new Sheet(width, height, enlarged));
    }

    private byte[] png(PictureText text, Sheet sheet) {
        BitSet used = new BitSet();
        for (int cell : map.cells().filled()) {
            used.set(scale.index(map.value(light, cell) * perRelative));
        }
        ColourBar bar = new ColourBar(sheet, scale, used);
        Rectangle room = sheet.write(text, 0, bar.width());
        Font font = Sheet.font(Font.PLAIN, 0.92 * sheet.letters());
        FontMetrics metrics = sheet.graphics().getFontMetrics(font);
        int left = metrics.stringWidth("-000.0") + 2 * sheet.margin() + metrics.getHeight();
        int bottom = 2 * metrics.getHeight() + sheet.margin();
        MapStretch stretch = stretch();
        double wide = grid.alongU().norm() * stretch.across();
        double high = grid.alongV().norm() * stretch.up();
        double perMillimetre = Math.min(
                (room.width - left - sheet.margin()) / wide, (room.height - bottom - metrics.getHeight() / 2.0) / high);
        int across = Math.max(1, (int) Math.round(wide * perMillimetre));
        int down = Math.max(1, (int) Math.round(high * perMillimetre));
        int x = room.x + left + (room.width - left - sheet.margin() - across) / 2;
        Rectangle picture = new Rectangle(x, room.y + metrics.getHeight() / 2, across, down);
        cells(sheet, picture);
        sheet.frame(picture);
        axis(sheet, font, picture, true);
        axis(sheet, font, picture, false);
        bar.paint(room);
        return sheet.png();
    }

    private void cells(Sheet sheet, Rectangle picture) {
        for (int j = 0; j < picture.height; j++) {
            int row = Math.min(grid.rows() - 1, (int) ((picture.height - j - 0.5) / picture.height * grid.rows()));
            for (int i = 0; i < picture.width; i++) {
                int column = Math.min(grid.columns() - 1, (int) ((i + 0.5) / picture.width * grid.columns()));
                int cell = column + grid.columns() * row;
                if (!map.cells().isEmpty(cell)) {
                    sheet.image()
                            .setRGB(picture.x + i, picture.y + j, scale.argb(map.value(light, cell) * perRelative));
                }
            }
        }
    }

    /** Marks along a side: coordinates of the layout where the side runs along an axis, otherwise lengths from the corner. */
    private void axis(Sheet sheet, Font font, Rectangle picture, boolean alongU) {
        Vector3D side = alongU ? grid.alongU() : grid.alongV();
        double length = side.norm();
        int axis = axis(side);
        double from = axis < 0 ? 0 : grid.origin().toArray()[axis];
        double sign = axis < 0 ? 1 : Math.signum(side.toArray()[axis]);
        String name = axis < 0 ? (alongU ? "u" : "v") + " from the corner, mm" : "xyz".charAt(axis) + ", mm";
        Graphics2D graphics = sheet.graphics();
        graphics.setFont(font);
        graphics.setColor(Sheet.INK);
        FontMetrics metrics = graphics.getFontMetrics();
        int pixels = alongU ? picture.width : picture.height;
        for (double value : marks(from, sign * length, Math.max(3.0 * metrics.getHeight(), 60) / pixels, alongU)) {
            int at = (int) Math.round((value - from) * sign / length * pixels);
            String label = RoundNumbers.letters(value);
            int wide = metrics.stringWidth(label);
            if (alongU) {
                int y = picture.y + picture.height;
                graphics.drawLine(picture.x + at, y, picture.x + at, y + 4);
                graphics.drawString(label, picture.x + at - wide / 2, y + 6 + metrics.getAscent());
            } else {
                int y = picture.y + picture.height - at;
                graphics.drawLine(picture.x - 5, y, picture.x - 1, y);
                graphics.drawString(label, picture.x - 8 - wide, y + metrics.getAscent() / 2 - 1);
            }
        }
        graphics.setColor(new Color(Sheet.INK.getRGB()));
        int wide = metrics.stringWidth(name);
        if (alongU) {
            graphics.drawString(
                    name,
                    picture.x + (picture.width - wide) / 2,
                    picture.y + picture.height + 6 + metrics.getHeight() + metrics.getAscent());
        } else {
            int x = picture.x - metrics.stringWidth("-000.0") - sheet.margin();
            graphics.rotate(-Math.PI / 2);
            graphics.drawString(name, -(picture.y + (picture.height + wide) / 2), x);
            graphics.rotate(Math.PI / 2);
        }
    }

    /** Round values along a side; of a stretched one, on which they would be too few to read a scale off, both ends. */
    private List<Double> marks(double from, double along, double apart, boolean alongU) {
        if ((alongU ? stretch().across() : stretch().up()) > 1) {
            return List.of(Math.round(from * 1000) / 1000.0, Math.round((from + along) * 1000) / 1000.0);
        }
        double length = Math.abs(along);
        double step = RoundNumbers.atLeast(length * apart);
        double low = Math.min(from, from + along);
        List<Double> marks = new ArrayList<>();
        for (long i = (long) Math.ceil(low / step - 1e-9); i * step <= low + length * (1 + 1e-9); i++) {
            marks.add(RoundNumbers.times(i, step));
        }
        return marks;
    }

    private static int axis(Vector3D side) {
        double[] direction = side.normalize().toArray();
        for (int k = 0; k < direction.length; k++) {
            if (Math.abs(direction[k]) > ALONG_AXIS) {
                return k;
            }
        }
        return -1;
    }
}
