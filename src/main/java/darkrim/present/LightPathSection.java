package darkrim.present;

import darkrim.scene.Surface;
import darkrim.study.CheckResult;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.SurfaceResult;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** By which surface once-reflected light reaches its receivers: first the worst of each requirement, then the strongest others. */
final class LightPathSection {
    private static final int RECEIVERS = 5;
    private static final Rows VIA = new Rows(5);
    /** Weaker paths are counted together. */
    private static final double LEAST_SHARE = 0.001;

    private LightPathSection() {}

    static void write(Prose page, CheckResult result, boolean everything) {
        List<SurfaceResult> receivers = receivers(result, everything);
        if (receivers.isEmpty()) {
            return;
        }
        page.heading("Light paths: pupil, via a surface (struck at an angle, deg), to a receiver");
        List<Surface> surfaces = result.scene().surfaces();
        Rows most = everything ? Rows.ALL : new Rows(RECEIVERS);
        Rows rows = everything ? Rows.ALL : VIA;
        Table table = new Table()
                .names("receiver")
                .names("via")
                .words("by")
                .numbers("deg")
                .numbers("share")
                .numbers("irradiance +- error");
        for (SurfaceResult receiver : most.shown(receivers)) {
            List<LightPath> paths = LightPath.to(receiver, surfaces);
            List<LightPath> strong = everything
                    ? paths
                    : rows.shown(paths.stream()
                            .filter(path -> path.share() >= LEAST_SHARE)
                            .toList());
            String name = Printable.of(receiver.surface().name());
            for (LightPath path : strong) {
                table.row(
                        name,
                        Printable.of(path.via().name()),
                        path.part(),
                        String.valueOf(Math.round(path.incidence())),
                        Figures.percent(path.share()),
                        Figures.withError(
                                path.irradiance().mean(), path.irradiance().standardError()));
                name = "";
            }
            List<LightPath> rest = paths.subList(strong.size(), paths.size());
            if (!rest.isEmpty()) {
                double share = rest.stream().mapToDouble(LightPath::share).sum();
                table.row("", Figures.counted(rest.size(), "other"), "", "", Figures.percent(share), "");
            }
        }
        page.table(table);
        if (most.left(receivers) > 0) {
            page.line("and " + most.left(receivers) + " more kinds of receiver (" + page.whole() + ")");
        }
    }

    private static List<SurfaceResult> receivers(CheckResult result, boolean everything) {
        List<SurfaceResult> all = result.judgement().surfaces();
        Set<SurfaceResult> chosen = new LinkedHashSet<>();
        for (RequirementResult each : result.judgement().requirements()) {
            if (Values.isReflected(each.requirement()) && !each.outcomes().isEmpty()) {
                chosen.add(all.get(each.worst().surface().index()));
            }
        }
        List<SurfaceResult> others = all.stream()
                .sorted(Comparator.comparingDouble((SurfaceResult surface) ->
                                surface.onceReflected().irradiance().mean())
                        .reversed())
                .toList();
        if (everything) {
            chosen.addAll(others);
        } else {
            Set<String> known = new HashSet<>();
            chosen.forEach(
                    surface -> known.add(SurfaceKind.kind(surface.surface().name())));
            SurfaceKind.of(others).stream()
                    .map(SurfaceKind::strongest)
                    .filter(surface ->
                            known.add(SurfaceKind.kind(surface.surface().name())))
                    .forEach(chosen::add);
        }
        return chosen.stream()
                .filter(surface -> surface.onceReflected().irradiance().mean() > 0)
                .toList();
    }
}
