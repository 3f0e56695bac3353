package darkrim.present;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.study.CheckResult;
import darkrim.study.irradiance.DarkProof;
import darkrim.verdict.Evidence;
import darkrim.verdict.SurfaceResult;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/** The surfaces that get light, with how much. */
final class SurfaceSection {
    private static final Rows LIT = new Rows(20);

    private SurfaceSection() {}

    static void write(Prose page, CheckResult result, boolean everything) {
        Values values = new Values(result);
        List<SurfaceResult> all = result.judgement().surfaces();
        List<SurfaceResult> lit = all.stream()
                .filter(SurfaceSection::getsLight)
                .sorted(Comparator.comparingDouble(SurfaceSection::direct)
                        .thenComparingDouble(SurfaceSection::reflected)
                        .reversed())
                .toList();
        page.heading("Surfaces that get light (relative irradiance, mean +- standard error)");
        if (lit.isEmpty()) {
            long open = all.stream().filter(SurfaceSection::isUnmeasured).count();
            page.paragraph("None of " + Figures.counted(all.size(), "surface") + " was seen to get light"
                    + (open == 0 ? "" : "; of these " + unmeasured(Figures.count(open), open, result.stopped())) + "."
                    + doubt(all));
            return;
        }
        OptionalDouble unit = values.unit();
        Table table =
                new Table().names("surface").numbers("of").numbers("area mm2").numbers("direct");
        if (unit.isPresent()) {
            table.numbers("W/m2");
        }
        table.numbers("once reflected");
        if (unit.isPresent()) {
            table.numbers("W/m2");
        }
        List<SurfaceKind> kinds = everything
                ? lit.stream().map(surface -> new SurfaceKind(surface, 1)).toList()
                : SurfaceKind.of(lit);
        Rows rows = everything ? Rows.ALL : LIT;
        for (SurfaceKind kind : rows.shown(kinds)) {
            table.row(cells(kind, values, unit));
        }
        page.table(table);
        if (rows.left(kinds) > 0) {
            page.line("and " + rows.left(kinds) + " more kinds of surface (" + page.whole() + ")");
        }
        if (!everything) {
            page.paragraph(
                    "Of surfaces that differ only in number and side the brightest; 'of' counts those that get light "
                            + "(" + page.whole() + ").");
        }
        page.paragraph(
                others(all.stream().filter(surface -> !getsLight(surface)).toList(), result.stopped())
                        + " 'none seen' is what samples say and proves nothing; 'proved dark' is "
                        + "proved." + doubt(all)
                        + " Relative irradiance 1 is what the unobstructed pupil gives at the origin, facing +z.");
    }

    private static String[] cells(SurfaceKind kind, Values values, OptionalDouble unit) {
        SurfaceResult surface = kind.strongest();
        String count = Figures.count(kind.count());
        String name = Printable.of(surface.surface().name());
        String area = Figures.three(surface.surface().area());
        String direct = values.of(surface, LightClass.DIRECT);
        String reflected = values.of(surface, LightClass.ONCE_REFLECTED);
        if (unit.isEmpty()) {
            return new String[] {name, count, area, direct, reflected};
        }
        double watts = unit.getAsDouble();
        return new String[] {
            name,
            count,
            area,
            direct,
            values.absolute(surface.direct().irradiance(), watts),
            reflected,
            values.absolute(surface.onceReflected().irradiance(), watts)
        };
    }

    /** Counts the surfaces that are dark behind the facets only; empty where there are none. */
    private static String doubt(List<SurfaceResult> all) {
        long count = all.stream()
                .filter(surface -> DarkProof.of(surface.darkness()) == DarkProof.BEHIND_FACETS)
                .count();
        return count == 0
                ? ""
                : " " + Figures.counted(count, "surface") + (count == 1 ? " is" : " are") + " '"
                        + DarkProof.BEHIND_FACETS.words()
                        + "': that is proved of the facets, not of the curved surfaces they stand for.";
    }

    /** How many surfaces stand in no row, those that were measured apart from the others. */
    private static String others(List<SurfaceResult> surfaces, boolean stopped) {
        long open = surfaces.stream().filter(SurfaceSection::isUnmeasured).count();
        long unlit = surfaces.size() - open;
        String measured =
                Figures.counted(unlit, "further surface") + (unlit == 1 ? " was" : " were") + " not seen to get light.";
        if (open == 0) {
            return measured;
        }
        return unlit == 0
                ? unmeasured(Figures.counted(open, "further surface"), open, stopped) + "."
                : measured + " Another " + unmeasured(Figures.count(open), open, stopped) + ".";
    }

    /** How many surfaces were not looked at in full, and why. */
    private static String unmeasured(String counted, long count, boolean stopped) {
        return counted + (count == 1 ? " was" : " were") + " not measured in full, "
                + (stopped
                        ? "since the check was stopped before their turn"
                        : "since the samples allowed do not reach for a look at every surface (--samples allows more)");
    }

    private static boolean isUnmeasured(SurfaceResult surface) {
        boolean dark = DarkProof.of(surface.darkness()) != DarkProof.NONE;
        return (!dark && isUnmeasured(surface.direct().irradiance()))
                || isUnmeasured(surface.onceReflected().irradiance());
    }

    /** One sample has no error; where none can carry light none is needed. */
    private static boolean isUnmeasured(Estimate estimate) {
        return estimate.largest() > 0 && estimate.samples() < 2;
    }

    private static boolean getsLight(SurfaceResult surface) {
        return direct(surface) > 0
                || reflected(surface) > 0
                || surface.darkness().orElse(null) instanceof Evidence.WitnessRay;
    }

    private static double direct(SurfaceResult surface) {
        return surface.direct().irradiance().mean();
    }

    private static double reflected(SurfaceResult surface) {
        return surface.onceReflected().irradiance().mean();
    }
}
