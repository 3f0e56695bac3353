package darkrim.present;

import darkrim.layout.form.Wording;
import darkrim.verdict.Verdict;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.knowm.xchart.AnnotationText;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.Styler;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** One curve with its limit, error band, pass region and a mark for each verdict. */
final class CurvePanel {
    private static final Color BAND = new Color(0, 0, 0, 40);
    private static final Color CURVE = new Color(0x1f4e79);
    private static final double ERRORS = 2;
    /** Room above and below, as a share of the height. */
    private static final double ROOM = 0.1;
    /** The same where nothing has a height. */
    private static final double LEAST_ROOM = 1e-12;
    /** Plots of less height are drawn of values made larger. */
    private static final double LEAST_RANGE = 0.1;

    /** Width of the labels at the left, so that panels stand under each other. */
    private static final int LABELS = 72;

    private record Mark(double x, double y, double error, double limit, Verdict verdict) {}

    private final String title;
    private final String across;
    private final String up;
    private final boolean highIsGood;
    private final List<Mark> marks = new ArrayList<>();

    /**
     * @param title what is drawn
     * @param across name and unit of the dimension
     * @param up name and unit of the value
     * @param highIsGood whether the requirement holds above its limit
     */
    CurvePanel(String title, String across, String up, boolean highIsGood) {
        this.title = title;
        this.across = across;
        this.up = up;
        this.highIsGood = highIsGood;
    }

    /** A point, ascending in x; one without a value leaves no mark. */
    void add(double x, double y, double error, double limit, Verdict verdict) {
        if (!Double.isNaN(y)) {
            marks.add(new Mark(x, y, Double.isNaN(error) ? 0 : error, limit, verdict));
        }
    }

    void paint(Graphics2D graphics, int width, int height) {
        boolean dark = !marks.isEmpty() && marks.stream().allMatch(mark -> mark.y == 0 && mark.limit == 0);
        if (marks.isEmpty() || dark) {
            graphics.setColor(ChartSheet.INK);
            graphics.setFont(ChartSheet.font(Font.BOLD, 13));
            graphics.drawString(title, 60, 24);
            graphics.setFont(ChartSheet.font(Font.PLAIN, 12));
            graphics.drawString(dark ? "0 at every point" : "not known at any point", 60, 44);
            return;
        }
        chart(width, height).paint(graphics, width, height);
    }

    XYChart chart(int width, int height) {
        double range = high() - low();
        if (range >= LEAST_RANGE) {
            return chart(width, height, 1);
        }
        // The library takes values that differ by less than 1e-4 for equally spaced and writes a label at each, one
        // over the other.
        double larger = StrictMath.pow(10, Math.ceil(-StrictMath.log10(range)));
        CurvePanel scaled = new CurvePanel(title, across, up, highIsGood);
        marks.forEach(
                mark -> scaled.add(mark.x, larger * mark.y, larger * mark.error, larger * mark.limit, mark.verdict));
        return scaled.chart(width, height, larger);
    }

    /**
     * The chart.
     *
     * @param larger what the values are multiplied with; the labels say them as they were
     */
    private XYChart chart(int width, int height, double larger) {
        XYChart chart = new XYChartBuilder()
                .width(width)
                .height(height)
                .title(title)
                .xAxisTitle(across)
                .yAxisTitle(up)
                .build();
        style(chart.getStyler(), low(), high());
        chart.getStyler().setYAxisTickLabelsFormattingFunction(value -> tick(value, larger));
        passRegion(chart, low(), high());
        band(chart);
        double[] x = marks.stream().mapToDouble(Mark::x).toArray();
        line(
                chart,
                "limit",
                x,
                marks.stream().mapToDouble(Mark::limit).toArray(),
                new BasicStroke(1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 4}, 0),
                ChartSheet.INK);
        line(chart, "value", x, marks.stream().mapToDouble(Mark::y).toArray(), new BasicStroke(1.6f), CURVE);
        verdict(chart, Verdict.PASS, SeriesMarkers.CIRCLE);
        verdict(chart, Verdict.FAIL, SeriesMarkers.CROSS);
        verdict(chart, Verdict.UNDECIDED, SeriesMarkers.SQUARE);
        return chart;
    }

    /** Lower end of the plot. */
    private double low() {
        return lowest() - room();
    }

    /** Upper end of the plot. */
    private double high() {
        return extent(1) + room();
    }

    private double room() {
        double high = extent(1);
        double low = lowest();
        return high > low ? ROOM * (high - low) : Math.max(LEAST_ROOM, Math.abs(high) * ROOM);
    }

    private double lowest() {
        return highIsGood ? extent(-1) : Math.min(0, extent(-1));
    }

    /** The lowest (-1) or highest (1) of what is drawn. */
    private double extent(int side) {
        return side
                * marks.stream()
                        .mapToDouble(mark -> Math.max(side * mark.y + ERRORS * mark.error, side * mark.limit))
                        .max()
                        .orElseThrow();
    }

    private void style(org.knowm.xchart.style.XYStyler styler, double low, double high) {
        double from = marks.get(0).x;
        double to = marks.get(marks.size() - 1).x;
        double side = to > from ? 0.02 * (to - from) : 1;
        styler.setLegendVisible(false);
        styler.setChartBackgroundColor(Color.WHITE);
        styler.setPlotBackgroundColor(Color.WHITE);
        styler.setPlotBorderColor(ChartSheet.PALE);
        styler.setChartTitleBoxVisible(false);
        styler.setChartTitleFont(ChartSheet.font(Font.BOLD, 13));
        styler.setAxisTitleFont(ChartSheet.font(Font.PLAIN, 12));
        styler.setAxisTickLabelsFont(ChartSheet.font(Font.PLAIN, 11));
        styler.setAnnotationTextFont(ChartSheet.font(Font.ITALIC, 12));
        styler.setAnnotationTextFontColor(ChartSheet.PALE);
        styler.setPlotGridLinesColor(new Color(0xe4e4e4));
        styler.setPlotGridLinesStroke(new BasicStroke(0.7f));
        styler.setMarkerSize(7);
        styler.setXAxisMin(from - side);
        styler.setXAxisMax(to + side);
        styler.setYAxisMin(low);
        styler.setYAxisMax(high);
        styler.setYAxisLeftWidthHint(LABELS);
        styler.setYAxisTickMarkSpacingHint(34);
        styler.setXAxisTickLabelsFormattingFunction(Wording::number);
        styler.setLegendPosition(Styler.LegendPosition.InsideNE);
    }

    /** Without the last bits of the library's own steps. */
    private static String tick(double value, double larger) {
        return Math.abs(value) < 1e-15 ? "0" : Wording.number(value / larger);
    }

    private void passRegion(XYChart chart, double low, double high) {
        double first = marks.get(0).limit;
        if (!highIsGood && marks.stream().allMatch(mark -> mark.limit == 0)) {
            // Nothing but no light at all passes.
            return;
        }
        double end = highIsGood ? high : low;
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (Mark mark : marks) {
            x.add(mark.x);
            y.add(mark.limit);
        }
        x.add(marks.get(marks.size() - 1).x);
        y.add(end);
        x.add(marks.get(0).x);
        y.add(end);
        area(chart, "pass region", x, y, ChartSheet.PASS);
        double middle = marks.get(0).x + 0.96 * (marks.get(marks.size() - 1).x - marks.get(0).x);
        chart.addAnnotation(new AnnotationText("pass", middle, first + 0.5 * (end - first), false));
    }

    private void band(XYChart chart) {
        if (marks.stream().allMatch(mark -> mark.error == 0)) {
            return;
        }
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (Mark mark : marks) {
            x.add(mark.x);
            y.add(mark.y + ERRORS * mark.error);
        }
        for (int i = marks.size() - 1; i >= 0; i--) {
            x.add(marks.get(i).x);
            y.add(marks.get(i).y - ERRORS * marks.get(i).error);
        }
        area(chart, "two standard errors", x, y, BAND);
    }

    private static void area(XYChart chart, String name, List<Double> x, List<Double> y, Color fill) {
        XYSeries series = chart.addSeries(name, x, y);
        series.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.PolygonArea);
        series.setFillColor(fill);
        series.setLineColor(new Color(0, 0, 0, 0));
        series.setMarker(SeriesMarkers.NONE);
    }

    private static void line(XYChart chart, String name, double[] x, double[] y, BasicStroke stroke, Color colour) {
        XYSeries series = chart.addSeries(name, x, y);
        series.setMarker(SeriesMarkers.NONE);
        series.setLineStyle(stroke);
        series.setLineColor(colour);
    }

    private void verdict(XYChart chart, Verdict verdict, Marker marker) {
        Predicate<Mark> own = mark -> mark.verdict == verdict;
        if (marks.stream().noneMatch(own)) {
            return;
        }
        XYSeries series = chart.addSeries(
                verdict.name(),
                marks.stream().filter(own).mapToDouble(Mark::x).toArray(),
                marks.stream().filter(own).mapToDouble(Mark::y).toArray());
        series.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter);
        series.setMarker(marker);
        series.setMarkerColor(verdict == Verdict.FAIL ? new Color(0xb03010) : CURVE);
    }
}
