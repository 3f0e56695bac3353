package darkrim.present;

import darkrim.layout.Requirement;
import darkrim.layout.form.Wording;
import darkrim.study.sweep.SweepPoint;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.Variation;
import darkrim.verdict.Verdict;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Maps over a grid of two dimensions: for each requirement, and for all together, a letter for the verdict at each point. */
final class VerdictMapSheet extends SweepSheet {
    private static final int PANEL = 360;
    private static final int LEFT = 70;
    private static final int BOTTOM = 46;
    private static final int TOP = 26;
    private static final int COLUMNS = 3;
    private static final int LEAST_FOR_LETTERS = 11;

    private final List<Double> across;
    private final List<Double> up;
    private final List<String> panels = new ArrayList<>();

    VerdictMapSheet(SweepResult result, String version) {
        super(result, version);
        up = values(result, 0);
        across = values(result, 1);
        panels.add("");
        result.layout().requirements().stream().map(Requirement::name).forEach(panels::add);
    }

    private static List<Double> values(SweepResult result, int dimension) {
        String name = result.variations().get(dimension).dimension();
        return result.points().stream()
                .map(point -> point.chosen().get(name))
                .distinct()
                .sorted()
                .toList();
    }

    @Override
    int width() {
        return COLUMNS * PANEL + 2 * MARGIN;
    }

    @Override
    int height() {
        int rows = (panels.size() + COLUMNS - 1) / COLUMNS;
        return HEAD + rows * PANEL + footHeight();
    }

    @Override
    void paintPanels(Graphics2D graphics) {
        for (int i = 0; i < panels.size(); i++) {
            Graphics2D own = (Graphics2D) graphics.create();
            own.translate(MARGIN + i % COLUMNS * PANEL, HEAD + i / COLUMNS * PANEL);
            panel(own, panels.get(i));
            own.dispose();
        }
    }

    private void panel(Graphics2D graphics, String requirement) {
        graphics.setColor(INK);
        graphics.setFont(font(Font.BOLD, 13));
        graphics.drawString(requirement.isEmpty() ? "all requirements" : Printable.of(requirement), LEFT, TOP - 8);
        double cellX = (double) (PANEL - LEFT - MARGIN) / across.size();
        double cellY = (double) (PANEL - BOTTOM - TOP) / up.size();
        for (SweepPoint point : result().points()) {
            int column = across.indexOf(point.chosen().get(variation(1).dimension()));
            int row = up.size() - 1 - up.indexOf(point.chosen().get(variation(0).dimension()));
            int x = (int) Math.round(LEFT + column * cellX);
            int y = (int) Math.round(TOP + row * cellY);
            int wide = (int) Math.round(LEFT + (column + 1) * cellX) - x;
            int high = (int) Math.round(TOP + (row + 1) * cellY) - y;
            cell(graphics, requirement.isEmpty() ? point.verdict() : point.verdict(requirement), x, y, wide, high);
        }
        labels(graphics, cellX, cellY);
    }

    private static void cell(Graphics2D graphics, Optional<Verdict> verdict, int x, int y, int wide, int high) {
        graphics.setColor(verdict.map(VerdictMapSheet::colour).orElse(Color.WHITE));
        graphics.fillRect(x, y, wide, high);
        graphics.setColor(PALE);
        hairline(graphics);
        graphics.drawRect(x, y, wide, high);
        if (Math.min(wide, high) >= LEAST_FOR_LETTERS) {
            graphics.setColor(INK);
            graphics.setFont(font(Font.BOLD, 11));
            graphics.drawString(letter(verdict), x + wide / 2 - 4, y + high / 2 + 4);
        } else if (verdict.isPresent() && verdict.get() == Verdict.FAIL) {
            graphics.drawLine(x, y + high, x + wide, y);
        }
    }

    private static Color colour(Verdict verdict) {
        return switch (verdict) {
            case PASS -> PASS;
            case FAIL -> FAIL;
            case UNDECIDED -> OPEN;
        };
    }

    private static String letter(Optional<Verdict> verdict) {
        return verdict.map(each -> each.name().substring(0, 1)).orElse("-");
    }

    private void labels(Graphics2D graphics, double cellX, double cellY) {
        graphics.setColor(INK);
        graphics.setFont(font(Font.PLAIN, 11));
        int every = (int) Math.ceil(42 / cellX);
        for (int i = 0; i < across.size(); i += every) {
            centred(graphics, Wording.number(across.get(i)), LEFT + (i + 0.5) * cellX, PANEL - BOTTOM + 14);
        }
        every = (int) Math.ceil(14 / cellY);
        for (int i = 0; i < up.size(); i += every) {
            String text = Wording.number(up.get(i));
            int wide = graphics.getFontMetrics().stringWidth(text);
            graphics.drawString(text, LEFT - 5 - wide, (int) Math.round(TOP + (up.size() - 1 - i + 0.5) * cellY) + 4);
        }
        graphics.setFont(font(Font.PLAIN, 12));
        centred(graphics, label(variation(1)), LEFT + (PANEL - LEFT - MARGIN) / 2.0, PANEL - BOTTOM + 30);
        graphics.rotate(-Math.PI / 2);
        centred(graphics, label(variation(0)), -(TOP + (PANEL - TOP - BOTTOM) / 2.0), 13);
        graphics.rotate(Math.PI / 2);
    }

    private static void centred(Graphics2D graphics, String text, double x, int y) {
        int wide = graphics.getFontMetrics().stringWidth(text);
        graphics.drawString(text, (int) Math.round(x - wide / 2.0), y);
    }

    private Variation variation(int index) {
        return result().variations().get(index);
    }

    @Override
    List<String> foot() {
        List<String> lines = new ArrayList<>();
        lines.add(
                "P: PASS. F: FAIL (struck through where cells are too small for letters). U: UNDECIDED. -: cannot be built."
                        + " Nothing was looked at between points.");
        stopped().ifPresent(lines::add);
        return lines;
    }
}
