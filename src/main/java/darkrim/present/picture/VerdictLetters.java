package darkrim.present.picture;

import darkrim.verdict.Verdict;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Puts the letter of its verdict on each surface that can be seen: failures first, and none over another. */
final class VerdictLetters {
    /** A surface that shows less than this gets no letter, pixels of a plain picture; a failure gets one if anything is seen. */
    private static final double LEAST_AREA = 250;

    private static final double LEAST_AREA_OF_FAILURE = 6;

    private final Graphics2D graphics;
    private final Font font;
    private final double scale;

    VerdictLetters(Graphics2D graphics, double letters, double scale) {
        this.graphics = graphics;
        this.font = Sheet.font(Font.BOLD, 0.85 * letters);
        this.scale = scale;
    }

    void paint(Map<Integer, Verdict> verdicts, SeenSurfaces seen) {
        List<Integer> order = verdicts.keySet().stream()
                .filter(surface -> seen.area(surface)
                        >= scale * scale * (verdicts.get(surface) == Verdict.FAIL ? LEAST_AREA_OF_FAILURE : LEAST_AREA))
                .sorted(Comparator.<Integer>comparingInt(surface -> rank(verdicts.get(surface)))
                        .thenComparing(surface -> -seen.area(surface))
                        .thenComparing(surface -> surface))
                .toList();
        List<Rectangle> taken = new ArrayList<>();
        for (int surface : order) {
            Optional<double[]> middle = seen.middle(surface);
            middle.ifPresent(at -> {
                Rectangle plate = plate(at);
                if (taken.stream().noneMatch(plate::intersects)) {
                    taken.add(plate);
                    paint(graphics, font, VerdictMark.of(verdicts.get(surface)), plate);
                }
            });
        }
    }

    private static int rank(Verdict verdict) {
        return switch (verdict) {
            case FAIL -> 0;
            case UNDECIDED -> 1;
            case PASS -> 2;
        };
    }

    private Rectangle plate(double[] at) {
        int side = side(graphics.getFontMetrics(font));
        return new Rectangle((int) Math.round(at[0] - side / 2.0), (int) Math.round(at[1] - side / 2.0), side, side);
    }

    static int side(FontMetrics metrics) {
        return metrics.getAscent() + 2;
    }

    /** A letter on its plate. */
    static void paint(Graphics2D graphics, Font font, VerdictMark mark, Rectangle plate) {
        graphics.setColor(new Color(VerdictMark.LETTER));
        graphics.fillRect(plate.x - 1, plate.y - 1, plate.width + 2, plate.height + 2);
        graphics.setColor(new Color(mark.argb()));
        graphics.fill(plate);
        graphics.setFont(font);
        FontMetrics metrics = graphics.getFontMetrics();
        graphics.setColor(new Color(VerdictMark.LETTER));
        String letter = String.valueOf(mark.letter());
        graphics.drawString(
                letter,
                plate.x + (plate.width - metrics.stringWidth(letter)) / 2,
                plate.y + (plate.height + metrics.getAscent() - metrics.getDescent()) / 2);
    }
}
