package darkrim.present;

import darkrim.study.tolerance.Contributor;
import darkrim.study.tolerance.RequirementTolerance;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Which contributors make up the variance of a margin: the greatest, a bar each. */
final class SharePanel {
    private static final int SHOWN = 6;
    private static final double LEAST = 0.001;
    private static final int LANE = 20;
    private static final int NAMES = 150;
    private static final int BARS = 150;
    private static final Color BAR = new Color(0x8fb0cf);

    private final List<Contributor> contributors;
    private final RequirementTolerance line;

    SharePanel(List<Contributor> contributors, RequirementTolerance line) {
        this.contributors = contributors;
        this.line = line;
    }

    void paint(Graphics2D graphics) {
        graphics.setFont(ChartSheet.font(Font.PLAIN, 12));
        graphics.setColor(ChartSheet.PALE);
        List<Double> shares = line.rootSumSquare().map(sum -> sum.shares()).orElse(List.of());
        List<Integer> shown = IntStream.range(0, shares.size())
                .boxed()
                .filter(i -> shares.get(i) >= LEAST)
                .sorted(Comparator.comparingDouble(i -> -shares.get(i)))
                .toList();
        if (shown.isEmpty()) {
            graphics.drawString(
                    shares.isEmpty()
                            ? "Not known: a margin is missing, or only known from one side."
                            : "No contributor changes the margin.",
                    0,
                    22);
            return;
        }
        graphics.drawString("contributor", 0, 14);
        graphics.drawString("share", NAMES, 14);
        graphics.drawString("margin per unit", NAMES + BARS + 62, 14);
        for (int lane = 0; lane < Math.min(SHOWN, shown.size()); lane++) {
            bar(graphics, shown.get(lane), shares.get(shown.get(lane)), 20 + lane * LANE);
        }
        if (shown.size() > SHOWN) {
            graphics.setColor(ChartSheet.PALE);
            graphics.drawString(Figures.counted(shown.size() - SHOWN, "more contributor"), 0, 34 + SHOWN * LANE);
        }
    }

    private void bar(Graphics2D graphics, int contributor, double share, int y) {
        String unit = contributors.get(contributor).unit();
        graphics.setColor(ChartSheet.INK);
        graphics.drawString(
                Printable.within(22, Printable.of(contributors.get(contributor).name())), 0, y + 14);
        graphics.drawString(Figures.percent(share), NAMES + BARS + 6, y + 14);
        graphics.drawString(
                Figures.three(line.slopes().get(contributor).perUnit()) + (unit.isEmpty() ? "" : " / " + unit),
                NAMES + BARS + 62,
                y + 14);
        graphics.setColor(BAR);
        graphics.fillRect(NAMES, y + 3, (int) Math.max(1, Math.round(share * BARS)), LANE - 6);
    }
}
