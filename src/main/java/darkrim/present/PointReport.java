package darkrim.present;

import darkrim.light.Estimate;
import darkrim.study.PointSight;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * What a point sees of the pupil as plain text.
 *
 * @param version version of the program
 */
public record PointReport(String version) {
    /** From so many samples of light and of shadow on, their spread tells their error to a tenth. */
    private static final double ENOUGH = 100;
    /** Exact and sampled values further apart than this, in standard errors, are not chance (2 in 10^9). */
    private static final double NOT_CHANCE = 6;
    /** Differences below this are rounding. */
    private static final double ROUNDING = 1e-9;

    /** The report, lines ended by a line feed. */
    public String of(PointSight sight) {
        Page page = new Page();
        page.paragraph(LayoutWords.title(sight.layout()));
        page.paragraph(SightWords.place(sight.at()) + " " + SightWords.verdict(sight.exactShare()) + ".");
        page.space();
        page.line("point    " + SightWords.position(sight.at()));
        page.line("file     " + LayoutWords.file(sight.layout()));
        page.line("program  Darkrim " + version + ", seed " + sight.seed() + ", "
                + Figures.counted(sight.obstruction().samples(), "sample")
                + (sight.stopped() ? " when it was stopped" : ""));
        values(page, sight);
        BlockerSection.write(page, sight);
        notes(page, sight);
        return page.text();
    }

    private static void values(Page page, PointSight sight) {
        page.heading("What the point sees");
        double share = sight.exactShare();
        double relative = sight.exactIrradiance();
        double shareApart = apart(share, sight.share(), shareError(share, sight.share()));
        double apart = apart(relative, sight.irradiance(), irradianceError(share, relative, sight.irradiance()));
        Table table = new Table()
                .words("direct light")
                .numbers("exact")
                .numbers("sampled, +- standard error")
                .words("difference");
        table.row("share of the pupil", exact(share), sampled(sight.share()), words(shareApart));
        table.row("relative irradiance", exact(relative), sampled(sight.irradiance()), words(apart));
        OptionalDouble radiance = sight.scene().beam().radiance();
        if (radiance.isPresent()) {
            double unit = sight.scene().referenceIrradiance() * radiance.getAsDouble();
            Estimate watts = sight.irradiance().times(unit);
            table.row("irradiance, W/m2", exact(unit * relative), sampled(watts), words(apart));
        }
        page.block(table.text());
        if (Math.abs(shareApart) > NOT_CHANCE || Math.abs(apart) > NOT_CHANCE) {
            page.space();
            page.paragraph(
                    "CAUTION: the two ways differ by more than chance. One of them is wrong here: do not rely on "
                            + "either, and please report it with the layout file.");
        }
        page.space();
        if (share == 0 && sight.view().areaFraction() > 0) {
            page.paragraph("The polygons leave a share of "
                    + Figures.three(sight.view().areaFraction())
                    + "; up to " + Figures.atMost(sight.view().roundingFraction())
                    + " it cannot be told from rounding and counts as none.");
        }
        page.paragraph(SightWords.withoutParts(sight));
    }

    /** The standard error that the exact share lets expect: it is known also where all samples agree. */
    static double shareError(double exact, Estimate sampled) {
        return Math.sqrt(exact * (1 - exact) / sampled.samples());
    }

    /**
     * The standard error of irradiance: what its samples spread, but where hardly any of them are expected to find the rarer of light and shadow no less
     * than the error of the share brings, for samples that all agree spread less than they err.
     */
    static double irradianceError(double exactShare, double exact, Estimate sampled) {
        double rarer = sampled.samples() * Math.min(exactShare, 1 - exactShare);
        if (rarer > ENOUGH || exactShare == 0) {
            return sampled.standardError();
        }
        return Math.max(exact / exactShare * shareError(exactShare, sampled), sampled.standardError());
    }

    /** Difference over an error; 0 where it is rounding, not a number where there are too few samples to say anything. */
    static double apart(double exact, Estimate sampled, double error) {
        if (sampled.samples() < 2) {
            return Double.NaN;
        }
        double difference = sampled.mean() - exact;
        return Math.abs(difference) <= ROUNDING ? 0 : difference / error;
    }

    private static String words(double apart) {
        if (Double.isNaN(apart)) {
            return "too few samples to tell";
        }
        if (apart == 0) {
            return "none";
        }
        return Double.isInfinite(apart)
                ? "a contradiction"
                : String.format(Locale.ROOT, "%+.1f standard errors", apart);
    }

    private static String exact(double value) {
        return value == 0 ? "none" : Figures.limit(value);
    }

    private static String sampled(Estimate estimate) {
        return estimate.samples() < 2 ? "not sampled" : Values.measured(estimate);
    }

    private static void notes(Page page, PointSight sight) {
        if (!sight.warnings().isEmpty()) {
            page.heading("Warnings");
            sight.warnings().forEach(warning -> page.paragraph("- ", "  ", Printable.of(warning.toString())));
        }
        page.space();
        page.paragraph(
                "Exact: the outline of the pupil without the projections of all that stands between. Sampled: lines "
                        + "to places spread evenly over the pupil. Relative irradiance 1 is what the unobstructed pupil gives at "
                        + "the origin, facing +z. One point says nothing of the rest of its surface: 'darkrim check' judges whole "
                        + "surfaces.");
    }
}
