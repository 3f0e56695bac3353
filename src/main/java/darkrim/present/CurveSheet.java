package darkrim.present;

import darkrim.layout.Requirement;
import darkrim.layout.form.Wording;
import darkrim.study.MarginScope;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementFigure;
import darkrim.study.sweep.RequirementLine;
import darkrim.study.sweep.SweepPoint;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.SweepTable;
import darkrim.study.sweep.Variation;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Curves over one dimension: of each requirement that changes, its value with the limit on the left and its margin on the right. */
final class CurveSheet extends SweepSheet {
    private static final int PANEL_WIDTH = 560;
    private static final int PANEL_HEIGHT = 250;
    /** Height of what stands there where nothing is drawn. */
    private static final int SENTENCE = 48;
    /** Letters of a line of the foot. */
    private static final int FOOT = 170;

    private final List<Requirement> drawn = new ArrayList<>();
    private final List<String> alike = new ArrayList<>();

    CurveSheet(SweepResult result, String version) {
        super(result, version);
        for (Requirement each : result.layout().requirements()) {
            if (changes(each)) {
                drawn.add(each);
            } else {
                alike.add(Printable.of(each.name()) + word(each));
            }
        }
    }

    private boolean changes(Requirement requirement) {
        return lines(requirement).stream()
                        .map(RequirementLine::figure)
                        .map(figure -> List.of(figure.verdict(), figure.value(), figure.margin()))
                        .distinct()
                        .count()
                > 1;
    }

    private String word(Requirement requirement) {
        return lines(requirement).stream()
                .findFirst()
                .map(line -> " " + line.figure().verdict())
                .orElse("");
    }

    private List<RequirementLine> lines(Requirement requirement) {
        return result().points().stream()
                .map(point -> point.line(requirement.name()))
                .flatMap(Optional::stream)
                .toList();
    }

    @Override
    int width() {
        return 2 * PANEL_WIDTH + 2 * MARGIN;
    }

    @Override
    int height() {
        int panels = drawn.isEmpty() ? SENTENCE : PANEL_HEIGHT * drawn.size();
        return HEAD + panels + MARGIN + footHeight();
    }

    @Override
    void paintPanels(Graphics2D graphics) {
        if (drawn.isEmpty()) {
            graphics.setColor(INK);
            graphics.setFont(font(Font.BOLD, 14));
            graphics.drawString(nothing(), MARGIN, HEAD + SENTENCE / 2);
        }
        for (int row = 0; row < drawn.size(); row++) {
            Requirement requirement = drawn.get(row);
            int y = HEAD + row * PANEL_HEIGHT;
            paint(graphics, value(requirement), MARGIN, y);
            paint(graphics, margin(requirement), MARGIN + PANEL_WIDTH, y);
        }
    }

    private String nothing() {
        long built = result().points().stream()
                .filter(point -> point.verdict().isPresent())
                .count();
        return built < 2
                ? "There is no curve to draw: " + (built == 0 ? "no point" : "only one point") + " can be built."
                : "There is no curve to draw: no verdict and no value changed between these points"
                        + (result().settings().points().margins() == MarginScope.NONE
                                ? "; margins were not measured."
                                : ", nor did any margin.");
    }

    private static void paint(Graphics2D graphics, CurvePanel panel, int x, int y) {
        Graphics2D own = (Graphics2D) graphics.create();
        own.translate(x, y);
        panel.paint(own, PANEL_WIDTH, PANEL_HEIGHT);
        own.dispose();
    }

    private CurvePanel value(Requirement requirement) {
        boolean highIsGood = requirement.condition() instanceof Requirement.PupilSeen
                || requirement.condition() instanceof Requirement.Clearance;
        boolean none = requirement.condition() instanceof Requirement.NoDirect;
        CurvePanel panel = new CurvePanel(
                Printable.of(requirement.name()) + ": "
                        + (none ? "direct light on the worst surface" : "value of the worst surface"),
                label(dimension()),
                SweepTable.unit(requirement),
                highIsGood);
        each(
                requirement,
                (x, figure) -> panel.add(x, figure.value(), figure.standardError(), figure.limit(), figure.verdict()));
        return panel;
    }

    private CurvePanel margin(Requirement requirement) {
        CurvePanel panel = new CurvePanel(
                Printable.of(requirement.name()) + ": margin",
                label(dimension()),
                "margin, " + SweepTable.marginUnit(requirement),
                true);
        boolean sampled = MarginUnit.of(requirement) == MarginUnit.RELATIVE_IRRADIANCE;
        each(
                requirement,
                (x, figure) ->
                        panel.add(x, figure.margin(), sampled ? figure.standardError() : 0, 0, figure.verdict()));
        return panel;
    }

    private interface Use {
        void at(double x, RequirementFigure figure);
    }

    private void each(Requirement requirement, Use use) {
        for (SweepPoint point : result().points()) {
            point.line(requirement.name())
                    .ifPresent(line -> use.at(point.chosen().get(dimension().dimension()), line.figure()));
        }
    }

    private Variation dimension() {
        return result().variations().get(0);
    }

    @Override
    List<String> foot() {
        List<String> lines = new ArrayList<>();
        lines.add(
                "Circle: PASS. Cross: FAIL. Square: UNDECIDED. Dashed: limit. Shaded and marked 'pass': where the requirement"
                        + " holds. Grey band: two standard errors either way.");
        lines.add(
                "The same random numbers at every point. Margins in mm are exact or, where nothing is near, no less than drawn."
                        + " Nothing was looked at between points.");
        stopped().ifPresent(lines::add);
        if (!alike.isEmpty()) {
            lines.addAll(wrapped("The same at every point, not drawn: " + String.join(", ", alike) + "."));
        }
        String none = result().points().stream()
                .filter(point -> point.verdict().isEmpty())
                .map(point -> Wording.number(point.chosen().get(dimension().dimension())))
                .collect(Collectors.joining(", "));
        if (!none.isEmpty()) {
            lines.addAll(wrapped("Cannot be built, not drawn: " + label(dimension()) + " = " + none + "."));
        }
        return lines;
    }

    private static List<String> wrapped(String words) {
        return org.apache.commons.text.WordUtils.wrap(words, FOOT, "\n", false)
                .lines()
                .toList();
    }
}
