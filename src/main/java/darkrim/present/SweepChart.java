package darkrim.present;

import darkrim.layout.form.Wording;
import darkrim.study.UnusableStudy;
import darkrim.study.sweep.Design;
import darkrim.study.sweep.SweepResult;

/** A sweep as a picture, SVG or PNG: curves for one dimension, maps of verdicts for a grid of two. */
public final class SweepChart {
    private final ChartSheet sheet;

    /**
     * @param result the sweep
     * @param version version of the program
     */
    public SweepChart(SweepResult result, String version) {
        sheet = result.variations().size() == 1
                ? new CurveSheet(result, version)
                : new VerdictMapSheet(result, version);
    }

    /**
     * Refuses what cannot be drawn.
     *
     * @param design what is swept
     * @param file name of the picture
     * @throws UnusableStudy saying why
     */
    public static void check(Design design, String file) throws UnusableStudy {
        int count = design.variations().size();
        if (count > 2 || (count == 2 && design.spread().isPresent())) {
            throw new UnusableStudy("--chart draws one dimension or a grid of two, not " + count + " dimensions"
                    + (design.spread().isPresent() ? " of spread points" : "") + "; --csv and --json hold them all");
        }
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
