package darkrim.present.picture;

import darkrim.verdict.Verdict;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.BitSet;
import java.util.Map;
import java.util.TreeSet;

/** A picture of parts and their light, drawn by the ray core without any display. The same bytes for any number of threads. */
public final class ScenePicture {
    /** Above this number of pixels two lines of sight along each side of a pixel do, instead of three. */
    private static final long MANY_PIXELS = 4_000_000;

    private final Subject subject;
    private final PictureText text;

    /**
     * @param subject what is shown; at least one surface
     * @param text what is written on it
     */
    public ScenePicture(Subject subject, PictureText text) {
        this.subject = subject;
        this.text = text;
    }

    /** How a picture is looked at, once its size is known. */
    @FunctionalInterface
    interface Placing {
        /**
         * The sight for a picture.
         *
         * @param aspect width over height
         */
        Sight at(double aspect);
    }

    /**
     * Draws with parts as large as they fit.
     *
     * @param view from where
     * @param width width, pixels
     * @param height height, pixels
     * @param threads number of threads
     * @return a PNG file
     */
    public byte[] png(View view, int width, int height, int threads) {
        return png(view::camera, new Sheet(width, height), threads);
    }

    /**
     * Draws with larger letters, for pictures that are printed small.
     *
     * @param enlarged how much larger they are
     */
    public byte[] png(View view, int width, int height, double enlarged, int threads) {
        return png(view::camera, new Sheet(width, height, enlarged), threads);
    }

    byte[] png(Placing placing, int width, int height, int threads) {
        return png(placing, new Sheet(width, height), threads);
    }

    private byte[] png(Placing placing, Sheet sheet, int threads) {
        Legend legend = new Legend(sheet);
        boolean coloured = subject.light().isPresent();
        ColourBar bar = new ColourBar(sheet, subject.scale(), used());
        Rectangle room =
                sheet.write(text, subject.verdicts().isEmpty() ? 0 : legend.height(), coloured ? bar.width() : 0);
        Sight sight = placing.at((double) room.width / room.height);
        int perPixel = (long) sheet.image().getWidth() * sheet.image().getHeight() > MANY_PIXELS ? 2 : 3;
        RayImage image = RayImage.of(subject, sight, room.width, room.height, perPixel, threads);
        for (int row = 0; row < room.height; row++) {
            for (int column = 0; column < room.width; column++) {
                sheet.image().setRGB(room.x + column, room.y + row, image.argb(column, row));
            }
        }
        Graphics2D inside = (Graphics2D) sheet.graphics().create(room.x, room.y, room.width, room.height);
        SeenSurfaces seen = new SeenSurfaces(image, subject.scene().surfaces().size());
        new VerdictOutlines(subject, sight, seen, inside, sheet.scale()).paint();
        PathLines.paint(inside, subject, sight, seen, sheet.scale());
        new VerdictLetters(inside, sheet.letters(), sheet.scale()).paint(subject.verdicts(), seen);
        if (sight instanceof Camera camera && camera.isParallel()) {
            LengthBar.paint(sheet, inside, room, camera);
        }
        if (sight instanceof Fisheye fisheye) {
            fisheye.outline(inside, room, sheet.scale());
            fisheye.compass(sheet, inside, room);
        }
        inside.dispose();
        sheet.frame(room);
        if (coloured) {
            bar.paint(room);
        }
        if (!subject.verdicts().isEmpty()) {
            legend.paint(subject.verdicts(), room);
        }
        return sheet.png();
    }

    /** Places in the palette of colours that a value of a shown surface has. */
    private BitSet used() {
        BitSet used = new BitSet();
        if (subject.light().isPresent()) {
            subject.shown().stream().forEach(surface -> {
                for (int cell : subject.maps().get(surface).cells().filled()) {
                    double value =
                            subject.maps().get(surface).value(subject.light().get(), cell);
                    used.set(subject.scale().index(value * subject.perRelative()));
                }
            });
        }
        return used;
    }

    /** What the letters and lines of verdicts mean. */
    private static final class Legend {
        private final Sheet sheet;
        private final Font font;
        private final Font bold;

        Legend(Sheet sheet) {
            this.sheet = sheet;
            font = Sheet.font(Font.PLAIN, 0.92 * sheet.letters());
            bold = Sheet.font(Font.BOLD, 0.85 * sheet.letters());
        }

        int height() {
            return sheet.lineHeight(font) + sheet.margin() / 2;
        }

        void paint(Map<Integer, Verdict> verdicts, Rectangle room) {
            Graphics2D graphics = sheet.graphics();
            int x = room.x;
            int top = room.y + room.height + sheet.margin() / 2;
            FontMetrics metrics = graphics.getFontMetrics(font);
            int base = top + metrics.getAscent();
            String lead = "Outlined: a requirement keeps light away from the face; its verdict:";
            graphics.setFont(font);
            graphics.setColor(Sheet.INK);
            graphics.drawString(lead, x, base);
            x += metrics.stringWidth(lead) + sheet.margin();
            for (Verdict verdict : new TreeSet<>(verdicts.values())) {
                VerdictMark mark = VerdictMark.of(verdict);
                int side = VerdictLetters.side(graphics.getFontMetrics(bold));
                int line = (int) Math.round(2.6 * sheet.letters());
                float[] dashes = new float[mark.dashes().size()];
                for (int i = 0; i < dashes.length; i++) {
                    dashes[i] = (float) (mark.dashes().get(i) * sheet.scale());
                }
                graphics.setColor(new Color(mark.argb()));
                graphics.setStroke(new BasicStroke(
                        (float) (mark.width() * sheet.scale()),
                        BasicStroke.CAP_BUTT,
                        BasicStroke.JOIN_ROUND,
                        1,
                        dashes.length == 0 ? null : dashes,
                        0));
                int middle = top + side / 2 + 1;
                graphics.drawLine(x, middle, x + line, middle);
                x += line + sheet.margin() / 2;
                VerdictLetters.paint(graphics, bold, mark, new Rectangle(x, top + 1, side, side));
                x += side + sheet.margin() / 3;
                graphics.setFont(font);
                graphics.setColor(Sheet.INK);
                graphics.drawString(mark.word(), x, base);
                x += metrics.stringWidth(mark.word()) + (int) (1.5 * sheet.margin());
            }
        }
    }
}
