package darkrim.present;

import darkrim.study.RequirementMargin;
import darkrim.study.tolerance.RequirementTolerance;
import darkrim.study.tolerance.RootSumSquare;
import darkrim.study.tolerance.ToleranceResult;
import darkrim.verdict.Verdict;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** The margins of one requirement against its limit: of the builds, of the root sum square, in the worst case and as drawn. */
final class MarginPanel {
    private static final int LEFT = 210;
    private static final int RIGHT = 700;
    private static final int TOP = 8;
    private static final int BUILDS = 56;
    private static final int LANE = 20;
    private static final int BASE = TOP + BUILDS + 3 * LANE + 4;
    private static final int BINS = 24;
    private static final double ROOM = 0.08;
    private static final double SIGMAS = 3;
    private static final int MOST_TICKS = 6;
    private static final Color MARK = new Color(0x1f4e79);
    private static final Color BAR = new Color(0x8fb0cf);
    private static final Color BAD = new Color(0xb03010);

    private final RequirementTolerance line;
    private final double[] builds;
    private final double from;
    private final double to;

    /**
     * @param result the study
     * @param requirement number of the requirement, from 0
     */
    MarginPanel(ToleranceResult result, int requirement) {
        line = result.requirements().get(requirement);
        builds = result.builds().stream()
                .filter(build -> !build.margins().isEmpty())
                .map(build -> build.margins().get(requirement))
                .filter(RequirementMargin::isKnown)
                .mapToDouble(RequirementMargin::margin)
                .toArray();
        double[] shown = DoubleStream.concat(
                        DoubleStream.of(builds),
                        DoubleStream.of(
                                0,
                                line.drawn().margin(),
                                line.worst()
                                        .map(worst -> worst.margin().margin())
                                        .orElse(0.0),
                                line.rootSumSquare()
                                        .map(RootSumSquare::atThreeSigma)
                                        .orElse(0.0),
                                line.rootSumSquare()
                                        .map(sum -> sum.mean() + SIGMAS * sum.deviation())
                                        .orElse(0.0)))
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        double low = shown[0];
        double high = shown[shown.length - 1];
        double room = high > low ? ROOM * (high - low) : 1;
        from = low - room;
        to = high + room;
    }

    void paint(Graphics2D graphics) {
        ground(graphics);
        builds(graphics);
        rootSumSquare(graphics);
        worst(graphics);
        RequirementMargin drawn = line.drawn();
        lane(graphics, 2, "as drawn", MarginWords.of(drawn), ChartSheet.INK);
        mark(graphics, 2, drawn.margin(), drawn.verdict().orElse(Verdict.FAIL));
    }

    private int x(double margin) {
        return (int) Math.round(LEFT + (margin - from) / (to - from) * (RIGHT - LEFT));
    }

    private static int middle(int lane) {
        return TOP + BUILDS + lane * LANE + LANE / 2;
    }

    private void ground(Graphics2D graphics) {
        graphics.setColor(ChartSheet.PASS);
        graphics.fillRect(x(0), TOP, RIGHT - x(0), BASE - TOP);
        graphics.setColor(ChartSheet.PALE);
        graphics.setFont(ChartSheet.font(Font.ITALIC, 12));
        graphics.drawString("pass", RIGHT - 32, TOP + 14);
        ChartSheet.hairline(graphics);
        graphics.drawRect(LEFT, TOP, RIGHT - LEFT, BASE - TOP);
        graphics.setFont(ChartSheet.font(Font.PLAIN, 11));
        double step = PlotAxes.step((to - from) / MOST_TICKS);
        for (long i = (long) Math.ceil(from / step); i * step <= to; i++) {
            int x = x(i * step);
            graphics.drawLine(x, BASE, x, BASE + 4);
            String label = Figures.limit(i * step + 0.0);
            graphics.drawString(label, x - graphics.getFontMetrics().stringWidth(label) / 2, BASE + 16);
        }
        graphics.setColor(ChartSheet.INK);
        graphics.drawString("margin, " + line.drawn().unit().words(), LEFT, BASE + 30);
        graphics.setStroke(
                new BasicStroke(1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 4}, 0));
        graphics.drawLine(x(0), TOP, x(0), BASE);
        graphics.setFont(ChartSheet.font(Font.BOLD, 13));
        graphics.drawString(Printable.within(28, Printable.of(line.requirement().name())), 0, TOP + 14);
    }

    private void builds(Graphics2D graphics) {
        graphics.setFont(ChartSheet.font(Font.PLAIN, 12));
        graphics.setColor(line.yield().passed() == line.yield().builds() ? ChartSheet.INK : BAD);
        graphics.drawString(
                Figures.count(line.yield().passed()) + " of "
                        + Figures.counted(line.yield().builds(), "build") + " pass",
                0,
                TOP + 34);
        graphics.setColor(ChartSheet.INK);
        graphics.drawString(
                "yield " + ToleranceReport.percent(line.yield().lower(), false) + " to "
                        + ToleranceReport.percent(line.yield().upper(), true),
                0,
                TOP + 50);
        int[] counts = new int[BINS];
        int most = 1;
        for (double margin : builds) {
            int bin = (int) Math.min(BINS - 1, (margin - from) / (to - from) * BINS);
            most = Math.max(most, ++counts[bin]);
        }
        for (int bin = 0; bin < BINS; bin++) {
            int left = LEFT + bin * (RIGHT - LEFT) / BINS;
            int right = LEFT + (bin + 1) * (RIGHT - LEFT) / BINS;
            int height = (int) Math.round((double) counts[bin] / most * (BUILDS - 6));
            graphics.setColor(BAR);
            graphics.fillRect(left, TOP + BUILDS - height, right - left - 1, height);
        }
    }

    private void rootSumSquare(Graphics2D graphics) {
        Optional<RootSumSquare> known = line.rootSumSquare();
        if (known.isEmpty()) {
            lane(graphics, 0, "root sum square", "not known", ChartSheet.PALE);
            return;
        }
        double least = known.get().atThreeSigma();
        double most = known.get().mean() + SIGMAS * known.get().deviation();
        lane(graphics, 0, "at 3 sigma", Figures.three(least), least < 0 ? BAD : ChartSheet.INK);
        graphics.setColor(MARK);
        graphics.setStroke(new BasicStroke(2f));
        int y = middle(0);
        graphics.drawLine(x(least), y, x(most), y);
        for (double end : new double[] {least, known.get().mean(), most}) {
            graphics.drawLine(x(end), y - 5, x(end), y + 5);
        }
    }

    private void worst(Graphics2D graphics) {
        String words = line.worst().map(found -> MarginWords.of(found.margin())).orElse("not found");
        boolean holds = line.worst()
                .flatMap(found -> found.margin().verdict())
                .filter(verdict -> verdict == Verdict.PASS)
                .isPresent();
        lane(graphics, 1, "worst case", words, holds || line.worst().isEmpty() ? ChartSheet.INK : BAD);
        line.worst()
                .ifPresent(found -> mark(
                        graphics,
                        1,
                        found.margin().margin(),
                        found.margin().verdict().orElse(Verdict.FAIL)));
    }

    private static void lane(Graphics2D graphics, int lane, String label, String number, Color colour) {
        graphics.setFont(ChartSheet.font(Font.PLAIN, 12));
        graphics.setColor(colour);
        graphics.drawString(label, 0, middle(lane) + 4);
        int width = graphics.getFontMetrics().stringWidth(number);
        graphics.drawString(number, LEFT - 12 - width, middle(lane) + 4);
    }

    private void mark(Graphics2D graphics, int lane, double margin, Verdict verdict) {
        if (!Double.isFinite(margin)) {
            return;
        }
        int x = x(margin);
        int y = middle(lane);
        graphics.setStroke(new BasicStroke(2f));
        graphics.setColor(verdict == Verdict.FAIL ? BAD : MARK);
        switch (verdict) {
            case PASS -> graphics.fillOval(x - 4, y - 4, 9, 9);
            case UNDECIDED -> graphics.fillRect(x - 4, y - 4, 8, 8);
            case FAIL -> {
                graphics.drawLine(x - 4, y - 4, x + 4, y + 4);
                graphics.drawLine(x - 4, y + 4, x + 4, y - 4);
            }
        }
    }
}
