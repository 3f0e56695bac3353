package darkrim.study.comparison;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.Requirement;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.MarginScope;
import darkrim.study.RequirementMargin;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Checks two layouts with the same random numbers and finds what differs. */
public final class ComparisonStudy {
    private ComparisonStudy() {}

    /**
     * Compares two files.
     *
     * @param first the layout as it was
     * @param second the layout as it is now
     * @param effort how hard to work; without a seed both get that of the first layout
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the first file, or if that can be used with the second
     */
    public static Comparison of(Path first, Path second, Effort effort, Watch watch) throws UnusableInput {
        LayoutFamily one = LayoutFamily.of(first).shaped(effort);
        LayoutFamily two = LayoutFamily.of(second).shaped(effort);
        long seed = effort.seed().orElse(one.written().sampling().seed());
        Effort alike = new Effort(effort.threads(), Optional.of(seed), effort.mostSamples(), MarginScope.REQUIREMENTS);
        CheckResult before = check(one, alike, watch);
        CheckResult after = check(two, alike, watch);
        return of(before, after, seed, effort.threads(), watch);
    }

    /**
     * Compares a layout that was checked with what it was before.
     *
     * @param first the layout as it was, in its shape
     * @param after the layout as it is now, checked
     * @param effort how hard to work; the seed is that of the check
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the layout as it was
     */
    public static Comparison of(LayoutFamily first, CheckResult after, Effort effort, Watch watch)
            throws UnusableInput {
        long seed = after.effort().seed();
        Effort alike = new Effort(effort.threads(), Optional.of(seed), effort.mostSamples(), MarginScope.REQUIREMENTS);
        return of(check(first, alike, watch), after, seed, effort.threads(), watch);
    }

    private static CheckResult check(LayoutFamily family, Effort effort, Watch watch) throws UnusableInput {
        Findings findings = new Findings();
        Layout layout = family.with(Map.of(), findings);
        return Check.of(layout, findings, effort, watch);
    }

    private static Comparison of(CheckResult before, CheckResult after, long seed, int threads, Watch watch) {
        List<RequirementResult> results = new ArrayList<>(before.judgement().requirements());
        results.addAll(after.judgement().requirements());
        Set<String> receivers = PathLedger.receivers(results.stream());
        Set<String> first = PathLedger.receivers(
                results.stream().filter(each -> each.requirement().limits(Requirement.LightClass.ONCE_REFLECTED)));
        double risk = 1 - before.effort().confidence();
        List<PathChange> paths;
        try (Workers workers = new Workers(threads)) {
            paths = new PathLedger(before.scene(), after.scene(), seed, risk).of(receivers, first, workers, watch);
        }
        Layout one = before.layout();
        Layout two = after.layout();
        List<SurfaceChange> surfaces = LayoutDifferences.surfaces(before.scene(), after.scene());
        List<String> onlyInOne = new ArrayList<>(LayoutDifferences.partsOnlyIn(two, one));
        onlyInOne.addAll(LayoutDifferences.partsOnlyIn(one, two));
        return new Comparison(
                before,
                after,
                LayoutDifferences.dimensions(one, two),
                LayoutDifferences.finishes(one, two),
                LayoutDifferences.partsOnlyIn(two, one),
                LayoutDifferences.partsOnlyIn(one, two),
                PartChange.of(surfaces, onlyInOne),
                surfaces,
                SettingDifferences.beam(one.beam(), two.beam()),
                SettingDifferences.others(one, two),
                requirements(before, after),
                paths,
                watch.stop()
                        || before.judgement().stopped()
                        || after.judgement().stopped());
    }

    private static List<RequirementChange> requirements(CheckResult before, CheckResult after) {
        List<RequirementMargin> first = RequirementMargin.of(before);
        List<RequirementMargin> second = RequirementMargin.of(after);
        Map<String, Requirement> one = asked(before);
        Map<String, Requirement> two = asked(after);
        Set<String> names = new LinkedHashSet<>(one.keySet());
        names.addAll(two.keySet());
        List<RequirementChange> changes = new ArrayList<>();
        for (String name : names) {
            changes.add(new RequirementChange(
                    name,
                    named(first, name),
                    named(second, name),
                    failing(before, name),
                    failing(after, name),
                    isAlike(one.get(name), two.get(name))));
        }
        return changes;
    }

    private static boolean isAlike(Requirement one, Requirement two) {
        return one == null
                || two == null
                || (one.surfaces().equals(two.surfaces()) && one.condition().equals(two.condition()));
    }

    private static Map<String, Requirement> asked(CheckResult result) {
        Map<String, Requirement> asked = new LinkedHashMap<>();
        result.layout().requirements().forEach(each -> asked.put(each.name(), each));
        return asked;
    }

    private static Optional<Failing> failing(CheckResult result, String name) {
        return result.judgement().requirements().stream()
                .filter(each -> each.requirement().name().equals(name))
                .findFirst()
                .map(each -> Failing.of(result, each));
    }

    private static Optional<RequirementMargin> named(List<RequirementMargin> figures, String name) {
        return figures.stream()
                .filter(figure -> figure.requirement().equals(name))
                .findFirst();
    }
}
