package darkrim.present;

import darkrim.study.UnusableStudy;
import darkrim.study.rejection.RejectionResult;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;

/** A rejection curve as a picture, SVG or PNG: a panel for each azimuth. */
public final class RejectionChart extends ChartSheet {
    private static final int WIDTH = 1040;
    private static final int PANEL = 420;

    private final RejectionResult result;

    /**
     * @param result the curve
     * @param version version of the program
     */
    public RejectionChart(RejectionResult result, String version) {
        super(
                result.layout(),
                "Light of a body " + Figures.limit(result.settings().body().diameter())
                        + " deg wide on the detectors, over its angle off axis"
                        + result.settings().source().map(name -> ": " + name).orElse(""),
                "Darkrim " + version + ", seed " + result.seed() + ", "
                        + Figures.count(result.settings().samples()) + " samples for each number and surface");
        this.result = result;
    }

    /**
     * Refuses a file whose name says no form.
     *
     * @throws UnusableStudy saying why
     */
    public static void check(String file) throws UnusableStudy {
        if (!Picture.isNamed(file)) {
            throw new UnusableStudy("--chart " + darkrim.layout.form.Wording.shortened(file)
                    + ": expected a name that ends in .svg or .png");
        }
    }

    /** The picture in the form that the name of its file asks for. */
    public byte[] content(String file) {
        return new Picture(width(), height(), this::paint).content(file);
    }

    @Override
    int width() {
        return WIDTH;
    }

    @Override
    int height() {
        return HEAD + PANEL * result.settings().azimuths().size() + MARGIN + footHeight();
    }

    @Override
    void paintPanels(Graphics2D graphics) {
        for (int i = 0; i < result.settings().azimuths().size(); i++) {
            Graphics2D own = (Graphics2D) graphics.create();
            own.translate(MARGIN, HEAD + i * PANEL);
            new RejectionPanel(result, result.settings().azimuths().get(i)).paint(own, WIDTH - 2 * MARGIN, PANEL);
            own.dispose();
        }
    }

    @Override
    List<String> foot() {
        List<String> lines = new ArrayList<>();
        lines.add(
                "Bars: two standard errors either way. Arrow down: none was found, there is less than where the arrow begins.");
        lines.add(
                "Filled mark on the lowest line: proved to be 0. Open mark above it: some was found, less than the scale shows."
                        + " Question mark: none found, no bound.");
        if (result.stopped()) {
            lines.add("STOPPED before its end: angles that were not reached are not drawn.");
        }
        return lines;
    }
}
