package darkrim.present;

import darkrim.study.tolerance.RequirementTolerance;
import darkrim.study.tolerance.ToleranceResult;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;

/** A row for each requirement: its margins against the limit on the left, its contributors on the right. */
final class ToleranceSheet extends ChartSheet {
    private static final int ROW = 176;
    private static final int WIDTH = 1240;
    private static final int SHARES = 740;

    private final ToleranceResult result;

    ToleranceSheet(ToleranceResult result, String version) {
        super(
                result.drawn().layout(),
                result.verdict() + ": " + ToleranceReport.sentence(result),
                "Darkrim " + version + ", seed " + result.drawn().effort().seed());
        this.result = result;
    }

    @Override
    int width() {
        return WIDTH;
    }

    @Override
    int height() {
        return HEAD + ROW * result.requirements().size() + footHeight();
    }

    @Override
    void paintPanels(Graphics2D graphics) {
        List<RequirementTolerance> lines = result.requirements();
        for (int i = 0; i < lines.size(); i++) {
            Graphics2D own = (Graphics2D) graphics.create();
            own.translate(MARGIN, HEAD + i * ROW + MARGIN);
            new MarginPanel(result, i).paint(own);
            own.translate(SHARES, 0);
            new SharePanel(result.contributors(), lines.get(i)).paint(own);
            own.dispose();
        }
    }

    @Override
    List<String> foot() {
        List<String> lines = new ArrayList<>();
        lines.add("Dashed: limit. Shaded and marked 'pass': where the requirement holds. Worst case: the worst that was"
                + " found within all tolerances at once; circle: it holds, cross: it does not.");
        lines.add(
                "Root sum square: the mean, and three standard deviations either way, if the margin is a straight-line function"
                        + " of the deviations. Share: of the variance of the margin.");
        if (!result.settings().withMargins()) {
            lines.add("Margins of the single builds were not measured; --build-margins measures and draws them.");
        }
        return lines;
    }
}
