package darkrim.present;

import darkrim.layout.form.Wording;
import darkrim.reflection.Reflection;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.Styler;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** Finishes as curves: on the left what is reflected against the angle of incidence, on the right the BRDF in the plane of incidence. */
public final class FinishChart {
    private static final int PANEL_WIDTH = 640;
    /** Height of a panel without its legend. */
    private static final int PLOT_HEIGHT = 390;
    /** Height of a line of the legend. */
    private static final int LEGEND_LINE = 22;

    private static final int HEAD = 48;
    private static final int FOOT = 48;
    /** Angle of incidence of the BRDF curves, deg. */
    private static final double INCIDENCE = 60;

    private static final Color[] COLOURS = {
        new Color(0x1f4e79), new Color(0xb03010), new Color(0x2e7d32), new Color(0x6a1b9a), new Color(0xb38600),
        new Color(0x222222), new Color(0x3aa0d8), new Color(0xe07b5a), new Color(0x7cb342), new Color(0xba68c8),
        new Color(0x8d6e63), new Color(0x9e9e9e)
    };

    /** More curves cannot be told apart. */
    public static final int MOST = COLOURS.length;

    private final List<ListedFinish> finishes;
    private final String version;

    /**
     * @param finishes what is drawn
     * @param version version of the program
     */
    public FinishChart(List<ListedFinish> finishes, String version) {
        this.finishes = List.copyOf(finishes);
        this.version = version;
    }

    /** Whether a picture of this name can be made. */
    public static boolean isPicture(String file) {
        return Picture.isNamed(file);
    }

    /** The picture in the form that the name of its file asks for. */
    public byte[] content(String file) {
        return new Picture(2 * PANEL_WIDTH, HEAD + panelHeight() + FOOT, this::paint).content(file);
    }

    /** The more curves, the higher: the legend takes nothing from the plots. */
    private int panelHeight() {
        return PLOT_HEIGHT + LEGEND_LINE * finishes.size();
    }

    private void paint(Graphics2D graphics) {
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, 2 * PANEL_WIDTH, HEAD + panelHeight() + FOOT);
        graphics.setColor(ChartSheet.INK);
        graphics.setFont(ChartSheet.font(Font.BOLD, 17));
        graphics.drawString("Finishes", ChartSheet.MARGIN, 30);
        paint(graphics, reflectance(), "none of these reflects anything", 0);
        paint(graphics, brdf(), "none of these scatters; they are mirrors, or reflect nothing", PANEL_WIDTH);
        graphics.setColor(ChartSheet.INK);
        graphics.setFont(ChartSheet.font(Font.PLAIN, 12));
        graphics.drawString(
                "What is 0 has no place on these scales and is not drawn; the mirror part has no BRDF. Right: angles beyond the normal, on the side of the mirror direction,"
                        + " are positive. Darkrim " + version,
                ChartSheet.MARGIN,
                HEAD + panelHeight() + 28);
    }

    private void paint(Graphics2D graphics, XYChart chart, String nothing, int x) {
        Graphics2D own = (Graphics2D) graphics.create();
        own.translate(x, HEAD);
        if (chart.getSeriesCollection().isEmpty()) {
            own.setFont(ChartSheet.font(Font.PLAIN, 13));
            own.drawString(chart.getTitle() + ": " + nothing, ChartSheet.MARGIN, 40);
        } else {
            chart.paint(own, PANEL_WIDTH, panelHeight());
        }
        own.dispose();
    }

    private XYChart reflectance() {
        XYChart chart = chart("All that is reflected", "angle of incidence, deg", "total reflectance");
        chart.getStyler().setXAxisMin(-1.8);
        chart.getStyler().setXAxisMax(91.8);
        for (int i = 0; i < finishes.size(); i++) {
            add(chart, i, 0, 90, 0.5, finishes.get(i)::reflectance);
        }
        return chart;
    }

    private XYChart brdf() {
        XYChart chart = chart(
                "BRDF at " + Wording.number(INCIDENCE) + " deg of incidence",
                "angle of the scattered light to the normal, deg",
                "BRDF, 1/sr");
        chart.getStyler().setXAxisMin(-93.6);
        chart.getStyler().setXAxisMax(93.6);
        for (int i = 0; i < finishes.size(); i++) {
            Reflection reflection = finishes.get(i).reflection();
            add(chart, i, -89, 89, 0.5, angle -> brdf(reflection, angle));
        }
        return chart;
    }

    /** In the plane of incidence, on the side of the mirror direction for positive angles. */
    private static double brdf(Reflection reflection, double angle) {
        double in = StrictMath.cos(Math.toRadians(INCIDENCE));
        double out = StrictMath.cos(Math.toRadians(angle));
        double between = in * out - StrictMath.sin(Math.toRadians(INCIDENCE)) * StrictMath.sin(Math.toRadians(angle));
        return reflection.broad(in, out) / Math.PI + reflection.lobe(in, out, between);
    }

    /** Adds a curve, if it has a point: values of 0 have no place on an axis of powers of ten. */
    private void add(XYChart chart, int index, double from, double to, double step, DoubleUnaryOperator curve) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (double at = from; at <= to + step / 2; at += step) {
            double value = curve.applyAsDouble(at);
            if (value > 0) {
                x.add(at);
                y.add(value);
            }
        }
        if (x.isEmpty()) {
            return;
        }
        ListedFinish finish = finishes.get(index);
        XYSeries series = chart.addSeries(Printable.of(finish.name()) + ", " + finish.band(), x, y);
        series.setMarker(SeriesMarkers.NONE);
        series.setLineColor(COLOURS[index % COLOURS.length]);
        series.setLineStyle(new BasicStroke(1.8f));
    }

    private XYChart chart(String title, String across, String up) {
        XYChart chart = new XYChartBuilder()
                .width(PANEL_WIDTH)
                .height(panelHeight())
                .title(title)
                .xAxisTitle(across)
                .yAxisTitle(up)
                .build();
        XYStyler styler = chart.getStyler();
        styler.setYAxisLogarithmic(true);
        styler.setXAxisTickLabelsFormattingFunction(Wording::number);
        styler.setXAxisTickMarkSpacingHint(70);
        styler.setChartBackgroundColor(Color.WHITE);
        styler.setPlotBackgroundColor(Color.WHITE);
        styler.setPlotBorderColor(ChartSheet.PALE);
        styler.setChartTitleBoxVisible(false);
        styler.setChartTitleFont(ChartSheet.font(Font.BOLD, 13));
        styler.setAxisTitleFont(ChartSheet.font(Font.PLAIN, 12));
        styler.setAxisTickLabelsFont(ChartSheet.font(Font.PLAIN, 11));
        styler.setLegendFont(ChartSheet.font(Font.PLAIN, 11));
        styler.setLegendPosition(Styler.LegendPosition.OutsideS);
        styler.setLegendLayout(Styler.LegendLayout.Vertical);
        styler.setLegendBorderColor(Color.WHITE);
        styler.setPlotGridLinesColor(new Color(0xe4e4e4));
        styler.setPlotGridLinesStroke(new BasicStroke(0.7f));
        return chart;
    }
}
