package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.layout.Requirement;
import darkrim.present.Cautions;
import darkrim.study.RequirementMargin;
import darkrim.study.tolerance.Build;
import darkrim.study.tolerance.Contributor;
import darkrim.study.tolerance.LoosestFactor;
import darkrim.study.tolerance.LoosestFactors;
import darkrim.study.tolerance.RequirementTolerance;
import darkrim.study.tolerance.RootSumSquare;
import darkrim.study.tolerance.SampledMargins;
import darkrim.study.tolerance.Slope;
import darkrim.study.tolerance.ToleranceResult;
import darkrim.study.tolerance.WorstCase;
import darkrim.study.tolerance.YieldInterval;
import darkrim.verdict.Verdict;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;

/** The whole of a tolerance study but for the single builds. The same study gives the same document, whenever and wherever it runs. */
record ToleranceDocument(
        int formatVersion,
        ProgramDocument program,
        ResultDocument.LayoutDocument layout,
        String verdict,
        Double wantedYield,
        long seed,
        boolean stopped,
        List<ContributorDocument> contributors,
        List<Line> requirements,
        Yield yield,
        Warned buildsWithWarnings,
        Loosest loosest,
        List<String> notModelled) {
    private static final int FORMAT_VERSION = 2;

    static ToleranceDocument of(ToleranceResult result, String version) {
        return new ToleranceDocument(
                FORMAT_VERSION,
                ProgramDocument.of(version),
                ResultDocument.LayoutDocument.of(result.drawn().layout()),
                RequirementDocument.word(result.verdict()),
                result.settings().wantedYield().orElse(null),
                result.drawn().effort().seed(),
                result.stopped(),
                result.contributors().stream().map(ContributorDocument::of).toList(),
                result.requirements().stream()
                        .map(each -> Line.of(result.contributors(), each))
                        .toList(),
                Yield.of(result.yield()),
                Warned.of(result.warned()),
                result.loosest().map(Loosest::of).orElse(null),
                Cautions.NOT_MODELLED);
    }

    /** Builds with a warning that is not said of the layout as drawn. */
    record Warned(int count, int firstBuild, String ofFirst) {
        private static Warned of(List<Build> warned) {
            return warned.isEmpty()
                    ? null
                    : new Warned(
                            warned.size(),
                            warned.get(0).number(),
                            warned.get(0).result().warnings());
        }
    }

    /** What deviates. */
    record ContributorDocument(
            String name, String unit, double minus, double plus, String distribution, Double sigmas) {
        private static ContributorDocument of(Contributor contributor) {
            boolean normal = contributor.tolerance().distribution() == darkrim.layout.Distribution.NORMAL;
            return new ContributorDocument(
                    contributor.name(),
                    contributor.unit().isEmpty() ? "1" : contributor.unit(),
                    contributor.tolerance().minus(),
                    contributor.tolerance().plus(),
                    contributor.tolerance().distribution().name().toLowerCase(Locale.ROOT),
                    normal ? contributor.tolerance().sigmas() : null);
        }
    }

    /** What the tolerances do to a requirement. */
    record Line(
            String name,
            RequirementDocument.Condition condition,
            String marginUnit,
            MarginDocument asDrawn,
            Worst worst,
            String verdict,
            Integer brokenByBuild,
            WorseBuild worseBuild,
            LesserBuild lesserBuild,
            Map<String, Double> slopes,
            Sum rootSumSquare,
            Sampled sampled,
            Yield yield) {
        private static Line of(List<Contributor> contributors, RequirementTolerance line) {
            return new Line(
                    line.requirement().name(),
                    RequirementDocument.Condition.of(line.requirement().condition()),
                    line.requirement().condition() instanceof Requirement.AtMost ? "1" : "mm",
                    MarginDocument.of(line.drawn()),
                    line.worst().map(worst -> Worst.of(contributors, worst)).orElse(null),
                    RequirementDocument.word(line.worstVerdict()),
                    line.brokenBy().isPresent() ? line.brokenBy().getAsInt() : null,
                    line.worse().map(WorseBuild::of).orElse(null),
                    line.lesser().map(LesserBuild::of).orElse(null),
                    line.slopes().isEmpty()
                            ? Map.of()
                            : byName(
                                    contributors,
                                    line.slopes().stream().map(Slope::perUnit).toList()),
                    line.rootSumSquare().map(sum -> Sum.of(contributors, sum)).orElse(null),
                    line.sampled()
                            .map(sampled -> Sampled.of(contributors, sampled))
                            .orElse(null),
                    Yield.of(line.yield()));
        }
    }

    /** A build of which less can be said than of the worst case. */
    record WorseBuild(int build, String verdict) {
        private static WorseBuild of(RequirementTolerance.WorseBuild worse) {
            return new WorseBuild(worse.number(), RequirementDocument.word(worse.verdict()));
        }
    }

    /** A build with less margin than the worst case. */
    record LesserBuild(int build, MarginDocument margin) {
        private static LesserBuild of(RequirementTolerance.LesserBuild lesser) {
            return new LesserBuild(lesser.number(), MarginDocument.of(lesser.margin()));
        }
    }

    /** A margin. */
    record MarginDocument(Double value, boolean capped, String verdict, String where, String setBy, String impossible) {
        private static MarginDocument of(RequirementMargin margin) {
            return new MarginDocument(
                    EstimateDocument.finite(margin.margin()),
                    margin.isBound(),
                    RequirementDocument.word(margin.verdict().orElse(Verdict.FAIL)),
                    margin.where(),
                    margin.setBy(),
                    margin.impossible());
        }
    }

    /** The worst case that was found. */
    record Worst(
            MarginDocument margin,
            Map<String, Double> deviations,
            int corners,
            boolean everyCorner,
            boolean alike,
            boolean cutShort,
            int looks) {
        private static Worst of(List<Contributor> contributors, WorstCase worst) {
            return new Worst(
                    MarginDocument.of(worst.margin()),
                    byName(contributors, worst.deviations()),
                    worst.corners(),
                    worst.everyCorner(),
                    worst.alike(),
                    worst.cutShort(),
                    worst.looks());
        }
    }

    /** What the slopes say of many builds. */
    record Sum(double mean, double standardDeviation, double atThreeSigma, double yield, Map<String, Double> shares) {
        private static Sum of(List<Contributor> contributors, RootSumSquare sum) {
            return new Sum(
                    sum.mean(), sum.deviation(), sum.atThreeSigma(), sum.yield(), byName(contributors, sum.shares()));
        }
    }

    /** The margins of the builds. */
    record Sampled(int builds, double mean, double standardDeviation, Map<String, Double> shares) {
        private static Sampled of(List<Contributor> contributors, SampledMargins sampled) {
            return new Sampled(
                    sampled.count(), sampled.mean(), sampled.deviation(), byName(contributors, sampled.shares()));
        }
    }

    /** Which share of builds passes. */
    record Yield(int builds, int passed, int undecided, double lower, double upper, double confidence) {
        private static Yield of(YieldInterval yield) {
            return new Yield(
                    yield.builds(),
                    yield.passed(),
                    yield.undecided(),
                    yield.lower(),
                    yield.upper(),
                    yield.confidence());
        }
    }

    /** The loosest common factors on the tolerances. */
    record Loosest(Factor estimate, Factor proved) {
        private static Loosest of(LoosestFactors loosest) {
            return new Loosest(
                    Factor.of(loosest.estimate()),
                    loosest.proved().map(Factor::of).orElse(null));
        }
    }

    /** A common factor on the tolerances, with what is known of the yield there. */
    record Factor(
            double factor, @JsonProperty("too_loose") Double beyond, int allowedToFail, Yield yield, boolean stopped) {
        private static Factor of(LoosestFactor loosest) {
            return new Factor(
                    loosest.factor(),
                    EstimateDocument.finite(loosest.beyond()),
                    loosest.allowed(),
                    Yield.of(loosest.yield()),
                    loosest.stopped());
        }
    }

    private static Map<String, Double> byName(List<Contributor> contributors, List<Double> values) {
        Map<String, Double> named = new LinkedHashMap<>();
        IntStream.range(0, contributors.size())
                .forEach(i -> named.put(contributors.get(i).name(), EstimateDocument.finite(values.get(i))));
        return named;
    }
}
