package darkrim.present.picture;

import darkrim.present.Figures;
import darkrim.present.LayoutWords;
import darkrim.present.Printable;
import darkrim.present.picture.ColourScale.Spacing;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.star.AvoidanceZone;
import darkrim.study.star.NamedStar;
import darkrim.study.star.StarCell;
import darkrim.study.star.StarRegion;
import darkrim.study.star.StarScanResult;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** A star scan as a picture: the share of the star's flux over its position, with the avoidance zone and the receivers outlined. */
public final class StarMapPicture {
    /** Shares are shown down to this part of the level. */
    private static final double SHOWN = 1e-2;

    private static final Color ZONE = new Color(0xffffff);
    private static final Color ZONE_EDGE = new Color(0xc02020);
    private static final Color RECEIVER = new Color(0x58a6d6);

    private final StarScanResult result;
    private final String version;
    private final Optional<String> date;

    /**
     * @param result the scan
     * @param version version of the program
     * @param date a date to be written on it
     */
    public StarMapPicture(StarScanResult result, String version, Optional<String> date) {
        this.result = result;
        this.version = version;
        this.date = date;
    }

    /**
     * Draws it.
     *
     * @param width width, pixels
     * @param height height, pixels
     * @return a PNG file
     */
    public byte[] png(int width, int height) {
        double least = SHOWN * result.settings().level();
        ColourScale found = ColourScale.around(
                Spacing.LOGARITHMIC,
                result.cells().stream().mapToDouble(StarCell::share).filter(share -> share >= least),
                "share of the star's flux",
                "");
        ColourScale scale = new ColourScale(
                Spacing.LOGARITHMIC,
                Math.min(found.least(), result.settings().level() / 10),
                Math.max(found.most(), result.settings().level()),
                found.quantity(),
                "");
        Sheet sheet = new Sheet(width, height);
        BitSet used = new BitSet();
        result.cells().forEach(cell -> used.set(scale.index(cell.share())));
        ColourBar bar = new ColourBar(sheet, scale, used);
        Rectangle room = sheet.write(text(), 0, bar.width());
        StarRegion region = result.region();
        PlaneAxes axes = new PlaneAxes(sheet, room, region.fromX(), region.fromY(), region.width(), region.height());
        Graphics2D graphics = sheet.graphics();
        Shape whole = graphics.getClip();
        graphics.clip(axes.picture());
        cells(sheet, axes, scale);
        receivers(graphics, axes, sheet.scale());
        zone(graphics, axes, sheet.scale());
        named(graphics, axes, sheet.scale());
        graphics.setClip(whole);
        axes.paint();
        bar.paint(room);
        return sheet.png();
    }

    private PictureText text() {
        List<String> foot = new ArrayList<>();
        foot.add("Once-reflected light on " + Printable.of(result.settings().onto())
                + ", all together; the star's own image is not in it. A cell shows the brightest position that was looked"
                + " at in it; one on its corner, which it shares with others, only where there is no other. Black: below"
                + " the scale, or none.");
        foot.add("Red on white: where a star sends, or may send, more than "
                + Figures.limit(result.settings().level()) + " of its flux. Blue: the surfaces that are lit."
                + (result.named().isEmpty() ? "" : " Crosses: stars of the layout."));
        if (result.stopped()) {
            foot.add("STOPPED before its end: what was not looked at is grey and counts as above the level.");
        }
        foot.add(LayoutWords.file(result.layout()) + "; Darkrim " + version + ", seed " + result.seed()
                + date.map(day -> "; " + Printable.of(day)).orElse("") + ".");
        double defocus = result.settings().focusHeight();
        return new PictureText(
                LayoutWords.title(result.layout()),
                "Star scan: light after one reflection, over the position of the star"
                        + (defocus == 0 ? "" : ", focus " + Figures.limit(defocus) + " mm above the focal plane"),
                foot);
    }

    private void cells(Sheet sheet, PlaneAxes axes, ColourScale scale) {
        Rectangle picture = axes.picture();
        for (StarCell cell : result.cells()) {
            int argb = scale.argb(cell.share());
            int left = (int) Math.round(axes.pixelX(cell.x() - cell.width() / 2));
            int right = (int) Math.round(axes.pixelX(cell.x() + cell.width() / 2));
            int top = (int) Math.round(axes.pixelY(cell.y() + cell.width() / 2));
            int low = (int) Math.round(axes.pixelY(cell.y() - cell.width() / 2));
            // A cell narrower than a pixel still shows where it is bright.
            sheet.graphics().setColor(new Color(argb));
            Rectangle square = new Rectangle(left, top, Math.max(1, right - left), Math.max(1, low - top));
            sheet.graphics().fill(square.intersection(picture));
        }
    }

    private void receivers(Graphics2D graphics, PlaneAxes axes, float scale) {
        Scene scene = result.scene();
        graphics.setStroke(new BasicStroke(1.2f * scale));
        graphics.setColor(RECEIVER);
        for (Surface surface : result.receivers()) {
            double[] box = {1e300, 1e300, -1e300, -1e300};
            for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                for (int corner = 0; corner < 3; corner++) {
                    box[0] = Math.min(box[0], scene.corner(f, corner, 0));
                    box[1] = Math.min(box[1], scene.corner(f, corner, 1));
                    box[2] = Math.max(box[2], scene.corner(f, corner, 0));
                    box[3] = Math.max(box[3], scene.corner(f, corner, 1));
                }
            }
            graphics.draw(path(
                    axes,
                    List.of(
                            Vector2D.of(box[0], box[1]),
                            Vector2D.of(box[2], box[1]),
                            Vector2D.of(box[2], box[3]),
                            Vector2D.of(box[0], box[3]))));
        }
    }

    private void zone(Graphics2D graphics, PlaneAxes axes, float scale) {
        for (AvoidanceZone.Area area : result.zone().areas()) {
            List<List<Vector2D>> rings = new ArrayList<>(area.holes());
            rings.add(area.outline());
            for (List<Vector2D> ring : rings) {
                Path2D path = path(axes, ring);
                graphics.setStroke(new BasicStroke(2.6f * scale));
                graphics.setColor(ZONE);
                graphics.draw(path);
                graphics.setStroke(new BasicStroke(1.2f * scale));
                graphics.setColor(ZONE_EDGE);
                graphics.draw(path);
            }
        }
    }

    private void named(Graphics2D graphics, PlaneAxes axes, float scale) {
        graphics.setStroke(new BasicStroke(1.8f * scale));
        for (NamedStar each : result.named()) {
            double x = axes.pixelX(each.star().focus().getX());
            double y = axes.pixelY(each.star().focus().getY());
            double arm = 7 * scale;
            graphics.setColor(Color.WHITE);
            graphics.draw(new Line2D.Double(x - arm, y, x + arm, y));
            graphics.draw(new Line2D.Double(x, y - arm, x, y + arm));
            graphics.drawString(Printable.of(each.star().name()), (float) (x + arm), (float) (y - arm / 2));
        }
    }

    private static Path2D path(PlaneAxes axes, List<Vector2D> ring) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < ring.size(); i++) {
            double x = axes.pixelX(ring.get(i).getX());
            double y = axes.pixelY(ring.get(i).getY());
            if (i == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        path.closePath();
        return path;
    }
}
