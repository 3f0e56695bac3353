package darkrim.present;

import darkrim.study.tolerance.RequirementTolerance;
import darkrim.study.tolerance.RootSumSquare;
import darkrim.study.tolerance.Slope;
import darkrim.study.tolerance.ToleranceResult;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Which contributors matter for which requirement. */
final class ShareSection {
    private static final double SHOWN = 0.001;

    private ShareSection() {}

    static void write(Prose page, ToleranceResult result) {
        List<RequirementTolerance> known = result.requirements().stream()
                .filter(each ->
                        each.rootSumSquare().filter(sum -> sum.deviation() > 0).isPresent())
                .toList();
        if (known.isEmpty()) {
            return;
        }
        page.heading("Who contributes: share of the variance of the margin");
        Table table = new Table()
                .names("requirement")
                .names("contributor")
                .numbers("share")
                .numbers("margin per unit");
        for (RequirementTolerance each : known) {
            rows(table, result, each);
        }
        page.table(table);
    }

    private static void rows(Table table, ToleranceResult result, RequirementTolerance requirement) {
        RootSumSquare sum = requirement.rootSumSquare().orElseThrow();
        String[] name = {Printable.of(requirement.requirement().name())};
        IntStream.range(0, sum.shares().size())
                .boxed()
                .filter(i -> sum.shares().get(i) >= SHOWN)
                .sorted(Comparator.comparingDouble(i -> -sum.shares().get(i)))
                .forEach(i -> {
                    Slope slope = requirement.slopes().get(i);
                    String unit = result.contributors().get(i).unit();
                    table.row(
                            name[0],
                            Printable.of(result.contributors().get(i).name()),
                            Figures.percent(sum.shares().get(i)),
                            Figures.three(slope.perUnit()) + (unit.isEmpty() ? "" : " / " + unit));
                    name[0] = "";
                });
    }
}
