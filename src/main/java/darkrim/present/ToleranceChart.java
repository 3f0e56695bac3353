package darkrim.present;

import darkrim.layout.form.Wording;
import darkrim.study.UnusableStudy;
import darkrim.study.tolerance.ToleranceResult;

/**
 * A tolerance study as a picture, SVG or PNG: of each requirement the margins as drawn, in the worst case and of many builds against the
 * limit, and who contributes.
 */
public final class ToleranceChart {
    private final ChartSheet sheet;

    /**
     * @param result the study
     * @param version version of the program
     */
    public ToleranceChart(ToleranceResult result, String version) {
        sheet = new ToleranceSheet(result, version);
    }

    /**
     * Refuses what cannot be drawn.
     *
     * @param file name of the picture
     * @throws UnusableStudy saying why
     */
    public static void check(String file) throws UnusableStudy {
        if (!Picture.isNamed(file)) {
            throw new UnusableStudy(
                    "--chart " + Wording.shortened(file) + ": expected a name that ends in .svg or .png");
        }
    }

    /** The picture in the form that the name of its file asks for. */
    public byte[] content(String file) {
        return new Picture(sheet.width(), sheet.height(), sheet::paint).content(file);
    }
}
